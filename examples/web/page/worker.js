"use strict";
// The worker: unpacks the program, runs it, and keeps the files that it may read.

// unlzma unpacks a .lzma file of known size; the form is told in the package lzma
// of examples/web.
function unlzma(from) {
  const view = new DataView(from.buffer, from.byteOffset);
  const lc = from[0] % 9, size = Number(view.getBigUint64(5, true)), out = new Uint8Array(size);
  const probs = (n) => new Uint16Array(n).fill(1024);
  const isMatch = probs(12), isRep = probs(12), isRep0 = probs(12), isRep1 = probs(12), isRep2 = probs(12), isLong = probs(12);
  const slots = probs(4 * 64), special = probs(128), align = probs(16), literal = probs(0x300 << lc);
  const lengths = () => ({ choice: probs(2), low: probs(8), mid: probs(8), high: probs(256) });
  const matchLength = lengths(), repLength = lengths();
  let at = 18, span = 0xffffffff, code = view.getUint32(14), n = 0, state = 0, r0 = 0, r1 = 0, r2 = 0, r3 = 0;
  const bit = (p, i) => {
    const bound = (span >>> 11) * p[i];
    let b;
    if (code < bound) { span = bound; p[i] += (2048 - p[i]) >> 5; b = 0; } else { span -= bound; code -= bound; p[i] -= p[i] >> 5; b = 1; }
    if (span < 0x1000000) { span = (span << 8) >>> 0; code = ((code << 8) | from[at++]) >>> 0; }
    return b;
  };
  const direct = (k) => {
    let v = 0;
    while (k--) {
      span >>>= 1;
      if (code >= span) { code -= span; v = v * 2 + 1; } else v *= 2;
      if (span < 0x1000000) { span = (span << 8) >>> 0; code = ((code << 8) | from[at++]) >>> 0; }
    }
    return v;
  };
  const tree = (p, base, bits) => { let k = 1; for (let i = 0; i < bits; i++) k = (k << 1) | bit(p, base + k); return k - (1 << bits); };
  const reversed = (p, base, bits) => { let k = 1, v = 0; for (let i = 0; i < bits; i++) { const b = bit(p, base + k); k = (k << 1) | b; v |= b << i; } return v; };
  const length = (l) => !bit(l.choice, 0) ? 2 + tree(l.low, 0, 3) : !bit(l.choice, 1) ? 10 + tree(l.mid, 0, 3) : 18 + tree(l.high, 0, 8);
  while (n < size) {
    if (!bit(isMatch, state)) {
      const base = 0x300 * ((n ? out[n - 1] : 0) >> (8 - lc));
      let k = 1;
      if (state >= 7) {
        let m = out[n - r0 - 1];
        do { const mb = (m >> 7) & 1; m <<= 1; const b = bit(literal, base + ((1 + mb) << 8) + k); k = (k << 1) | b; if (b !== mb) break; } while (k < 0x100);
      }
      while (k < 0x100) k = (k << 1) | bit(literal, base + k);
      out[n++] = k;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let len;
    if (bit(isRep, state)) {
      if (!bit(isRep0, state)) {
        if (!bit(isLong, state)) { out[n] = out[n - r0 - 1]; n++; state = state < 7 ? 9 : 11; continue; }
      } else {
        let d;
        if (!bit(isRep1, state)) d = r1; else { if (!bit(isRep2, state)) d = r2; else { d = r3; r3 = r2; } r2 = r1; }
        r1 = r0; r0 = d;
      }
      len = length(repLength);
      state = state < 7 ? 8 : 11;
    } else {
      r3 = r2; r2 = r1; r1 = r0;
      len = length(matchLength);
      const slot = tree(slots, 64 * Math.min(len - 2, 3), 6);
      if (slot < 4) r0 = slot; else {
        const bits = (slot >> 1) - 1, base = (2 | (slot & 1)) * 2 ** bits;
        r0 = slot < 14 ? base + reversed(special, base - slot, bits) : base + direct(bits - 4) * 16 + reversed(align, 0, 4);
      }
      state = state < 7 ? 7 : 10;
    }
    let source = n - r0 - 1;
    if (source < 0) throw new Error("the page is damaged: load it anew");
    for (let end = Math.min(n + len, size); n < end;) out[n++] = out[source++];
  }
  return out;
}

// Files that a question names are those that were opened in the page; there is no
// other file, and nothing is written but to the console.
const files = new Map(), opened = new Map();
const missing = (code) => Object.assign(new Error(code), { code });
const decoder = new TextDecoder();
globalThis.fs = new Proxy({
  constants: { O_WRONLY: 1, O_RDWR: 2, O_CREAT: 64, O_TRUNC: 512, O_APPEND: 1024, O_EXCL: 128, O_DIRECTORY: -1 },
  writeSync: (_, b) => { console.log(decoder.decode(b)); return b.length; },
  write(fd, b, offset, length, position, done) { done(null, this.writeSync(fd, b)); },
  open(name, flags, mode, done) {
    if (!files.has(name)) return done(missing("ENOENT"));
    const fd = 100 + opened.size;
    opened.set(fd, { data: new TextEncoder().encode(files.get(name)), at: 0 });
    done(null, fd);
  },
  fstat(fd, done) {
    const f = opened.get(fd);
    if (!f) return done(missing("EBADF"));
    done(null, { dev: 0, ino: fd, mode: 0o100444, nlink: 1, uid: 0, gid: 0, rdev: 0, size: f.data.length, blksize: 4096, blocks: 1, atimeMs: 0, mtimeMs: 0, ctimeMs: 0, isDirectory: () => false });
  },
  read(fd, buffer, offset, length, position, done) {
    const f = opened.get(fd);
    if (!f) return done(missing("EBADF"));
    const part = f.data.subarray(f.at, f.at + length);
    buffer.set(part, offset);
    f.at += part.length;
    done(null, part.length);
  },
  close(fd, done) { if (opened.has(fd)) opened.get(fd).data = new Uint8Array(); done(null); },
  fsync(fd, done) { done(null); },
}, { get: (o, name) => o[name] || ((...args) => args[args.length - 1](missing("ENOSYS"))) });

onmessage = async ({ data }) => {
  try {
    if (data.files) for (const [name, text] of data.files) files.set(name, text);
    if (data.ask) return answer(data.ask);
    let module = data.module;
    if (!module) {
      const text = atob(data.packed), packed = new Uint8Array(text.length);
      for (let i = 0; i < text.length; i++) packed[i] = text.charCodeAt(i);
      module = await WebAssembly.compile(unlzma(packed));
      postMessage({ module });
    }
    const go = new Go();
    go.run(await WebAssembly.instantiate(module, go.importObject));
  } catch (e) {
    postMessage({ failed: String(e && e.message || e) });
  }
};
