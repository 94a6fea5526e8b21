"use strict";
// The worker: unpacks the program, runs it, and keeps the files that it may read.

// unlzma unpacks a .lzma file of known size; the form is told in the package lzma
// of examples/web.
function unlzma(from) {
  const view = new DataView(from.buffer, from.byteOffset);
  const lc = from[0] % 9, places = 1 << Math.floor(from[0] / 45), size = view.getUint32(5, true), out = new Uint8Array(size);
  const probs = (n) => new Uint16Array(n).fill(1024);
  const isMatch = probs(12 * places), isRep = probs(12), isRep0 = probs(12), isRep1 = probs(12), isRep2 = probs(12), isLong = probs(12 * places);
  const slots = probs(4 * 64), special = probs(128), align = probs(16), literal = probs(0x300 << lc);
  const lengths = () => ({ choice: probs(2), low: probs(places * 8), mid: probs(places * 8), high: probs(256) });
  const matchLength = lengths(), repLength = lengths();
  // Span and code of the range coder: whole numbers of 32 bits, which a variable of a
  // closure would hold as objects.
  const rc = new Uint32Array([0xffffffff, view.getUint32(14)]);
  let at = 18, n = 0, state = 0, r0 = 0, r1 = 0, r2 = 0, r3 = 0;
  const bit = (p, i) => {
    const v = p[i], span = rc[0], bound = (span >>> 11) * v, code = rc[1];
    if (code < bound) {
      p[i] = v + ((2048 - v) >> 5);
      if (bound < 0x1000000) { rc[0] = bound << 8; rc[1] = (code << 8) | from[at++]; } else rc[0] = bound;
      return 0;
    }
    const left = span - bound, further = code - bound;
    p[i] = v - (v >> 5);
    if (left < 0x1000000) { rc[0] = left << 8; rc[1] = (further << 8) | from[at++]; } else { rc[0] = left; rc[1] = further; }
    return 1;
  };
  const direct = (k) => {
    let v = 0;
    while (k--) {
      const span = rc[0] >>> 1, code = rc[1], one = code >= span;
      v = (v << 1) | (one ? 1 : 0);
      const left = one ? code - span : code;
      if (span < 0x1000000) { rc[0] = span << 8; rc[1] = (left << 8) | from[at++]; } else { rc[0] = span; rc[1] = left; }
    }
    return v;
  };
  // tree reads a tree of bits down to a leaf of that many; the coder is kept in
  // variables on the way.
  const tree = (p, base, bits) => {
    let k = 1, span = rc[0], code = rc[1];
    const leaf = 1 << bits;
    while (k < leaf) {
      const v = p[base + k], bound = (span >>> 11) * v;
      if (code < bound) { span = bound; p[base + k] = v + ((2048 - v) >> 5); k <<= 1; } else { span = (span - bound) >>> 0; code = (code - bound) >>> 0; p[base + k] = v - (v >> 5); k = (k << 1) | 1; }
      if (span < 0x1000000) { span = (span << 8) >>> 0; code = ((code << 8) | from[at++]) >>> 0; }
    }
    rc[0] = span; rc[1] = code;
    return k - leaf;
  };
  // matched reads a byte where another stands at the last distance.
  const matched = (base, m) => {
    let k = 1, span = rc[0], code = rc[1], offset = 0x100;
    while (k < 0x100) {
      m <<= 1;
      const mb = m & offset, i = base + offset + mb + k, v = literal[i], bound = (span >>> 11) * v;
      if (code < bound) { span = bound; literal[i] = v + ((2048 - v) >> 5); k <<= 1; offset &= ~mb; } else { span = (span - bound) >>> 0; code = (code - bound) >>> 0; literal[i] = v - (v >> 5); k = (k << 1) | 1; offset &= mb; }
      if (span < 0x1000000) { span = (span << 8) >>> 0; code = ((code << 8) | from[at++]) >>> 0; }
    }
    rc[0] = span; rc[1] = code;
    return k;
  };
  const reversed = (p, base, bits) => { let k = 1, v = 0; for (let i = 0; i < bits; i++) { const b = bit(p, base + k); k = (k << 1) | b; v |= b << i; } return v; };
  const length = (l, place) => !bit(l.choice, 0) ? 2 + tree(l.low, 8 * place, 3) : !bit(l.choice, 1) ? 10 + tree(l.mid, 8 * place, 3) : 18 + tree(l.high, 0, 8);
  while (n < size) {
    const place = n & (places - 1);
    if (!bit(isMatch, places * state + place)) {
      const base = 0x300 * ((n ? out[n - 1] : 0) >> (8 - lc));
      out[n] = state < 7 ? tree(literal, base, 8) : matched(base, out[n - r0 - 1]);
      n++;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let len;
    if (bit(isRep, state)) {
      if (!bit(isRep0, state)) {
        if (!bit(isLong, places * state + place)) { out[n] = out[n - r0 - 1]; n++; state = state < 7 ? 9 : 11; continue; }
      } else {
        let d;
        if (!bit(isRep1, state)) d = r1; else { if (!bit(isRep2, state)) d = r2; else { d = r3; r3 = r2; } r2 = r1; }
        r1 = r0; r0 = d;
      }
      len = length(repLength, place);
      state = state < 7 ? 8 : 11;
    } else {
      r3 = r2; r2 = r1; r1 = r0;
      len = length(matchLength, place);
      const slot = tree(slots, 64 * Math.min(len - 2, 3), 6);
      if (slot < 4) r0 = slot; else {
        const bits = (slot >> 1) - 1, base = (2 | (slot & 1)) << bits;
        r0 = (slot < 14 ? base + reversed(special, base - slot, bits) : base + (direct(bits - 4) << 4) + reversed(align, 0, 4)) | 0;
      }
      state = state < 7 ? 7 : 10;
    }
    const source = (n - r0 - 1) | 0, end = Math.min(n + len, size) | 0;
    if (source < 0) throw new Error("the page is damaged: load it anew");
    if (end - n > 24 && r0 >= len) { out.copyWithin(n, source, source + end - n); n = end; } else for (let k = source; n < end; k++) out[n++] = out[k];
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
