"use strict";
(() => {
  const $ = (id) => document.getElementById(id);
  // make builds an element; text is always text, never markup.
  const make = (name, attributes = {}, ...inside) => {
    const e = document.createElement(name);
    for (const [k, v] of Object.entries(attributes)) if (v !== undefined && v !== false) e.setAttribute(k, v === true ? "" : v);
    e.append(...inside.filter((x) => x !== undefined && x !== null));
    return e;
  };
  const later = (wait, f) => { let t; return () => { clearTimeout(t); t = setTimeout(f, wait); }; };
  const list = (all) => all || [];
  const many = (n, one, more) => n + " " + (n === 1 ? one : more);

  // ---- the worker
  const engine = { id: 0, waits: new Map(), module: null, ready: null };
  engine.start = () => {
    const source = URL.createObjectURL(new Blob([$("worker").textContent], { type: "text/javascript" }));
    const worker = engine.worker = new Worker(source);
    engine.ready = new Promise((done, failed) => {
      worker.onmessage = ({ data }) => {
        if (data.module) { engine.module = data.module; return; }
        if (data.failed) { failed(new Error(data.failed)); $("state").textContent = "It doesn't work here: " + data.failed; return; }
        const m = JSON.parse(data);
        if (!m.id) return done();
        const w = engine.waits.get(m.id);
        if (!w) return;
        if (m.done) { engine.waits.delete(m.id); w.done(m); } else if (w.part) w.part(m);
      };
      worker.onerror = (e) => { failed(new Error(e.message)); $("state").textContent = "It doesn't work here: " + e.message; };
    });
    worker.postMessage(engine.module ? { module: engine.module } : { packed: $("packed").textContent });
    URL.revokeObjectURL(source);
  };
  engine.ask = async (m, part, files) => {
    await engine.ready;
    m.id = ++engine.id;
    return new Promise((done) => {
      engine.waits.set(m.id, { done, part });
      engine.worker.postMessage({ ask: JSON.stringify(m), files });
    });
  };
  // stop asks the work to end, and ends the worker if it doesn't listen.
  engine.stop = () => {
    const waiting = [...engine.waits.values()];
    engine.worker.postMessage({ ask: JSON.stringify({ id: ++engine.id, do: "stop" }) });
    setTimeout(() => {
      if (!waiting.some((w) => [...engine.waits.values()].includes(w))) return;
      engine.worker.terminate();
      engine.waits.clear();
      engine.start();
      for (const w of waiting) w.done({ stopped: true });
    }, 400);
  };

  // drawn puts a drawing of the program's into an element.
  const drawn = (into, svg) => { into.innerHTML = svg; return into; };
  const table = (caption, header, rows) => make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": caption }, make("table", {}, make("caption", {}, caption),
    make("thead", {}, make("tr", {}, ...header.map((h) => make("th", { scope: "col" }, h)))),
    make("tbody", {}, ...rows.map((row) => make("tr", {}, ...row.map((c) => c instanceof Node ? make("td", {}, c) : make("td", {}, c)))))));
  const told = (id, faults) => $(id).replaceChildren(...faults.map((f) => make("li", {}, f)));

  // ---- one question
  let questions = [], now = null;
  const listed = () => {
    const words = $("find").value.toLowerCase().split(/\s+/).filter(Boolean);
    $("questions").replaceChildren(...questions.map((g) => {
      const of = g.of.filter((q) => words.every((w) => (q.name + " " + q.question + " " + g.group + " " + q.fields.map((f) => f.usage).join(" ")).toLowerCase().includes(w)));
      return of.length ? make("div", {}, make("h3", {}, g.group), make("ul", {}, ...of.map((q) =>
        make("li", {}, make("a", { href: "#" + q.name, "aria-current": now && q.name === now.name ? "page" : undefined }, make("b", {}, q.name), " ", q.question))))) : "";
    }));
  };
  const typed = {}; // what was typed, by question
  const pick = (q) => {
    now = q;
    document.title = q.name + ": " + q.question;
    $("question").textContent = q.question.charAt(0).toUpperCase() + q.question.slice(1);
    typed[q.name] = typed[q.name] || { text: {}, files: {} };
    $("fields").replaceChildren(...q.fields.map((f) => {
      const id = "f-" + f.name, said = { id, name: f.name, "aria-describedby": id + "-says " + id + "-wrong" };
      let input;
      if (f.kind === "yes") {
        input = make("input", { type: "checkbox", ...said });
        input.checked = (typed[q.name].text[f.name] ?? f.value) === "true";
      } else if (f.kind === "file") {
        input = make("input", { type: "file", ...said });
      } else if (f.name === "units") {
        input = make("select", said, ...[["plan", "those of the inputs"], ["field", "field units"], ["si", "SI"]].map(([v, t]) => make("option", { value: v }, t)));
        input.value = typed[q.name].text.units ?? f.value;
      } else {
        input = make("input", { type: "text", ...said, spellcheck: "false" });
        input.value = typed[q.name].text[f.name] ?? f.value;
      }
      return make("div", { class: "field" + (f.kind === "yes" ? " yes" : "") }, make("label", { for: id }, f.name.replaceAll("-", " ")), input, make("small", { id: id + "-says" }, f.usage), make("small", { id: id + "-wrong", class: "bad" }));
    }));
    listed();
    const link = $("questions").querySelector("[aria-current]");
    if (link) $("questions").scrollTop = link.offsetTop - $("questions").offsetTop - 60;
    ask();
  };
  const command = () => {
    const args = [], files = [], t = typed[now.name];
    for (const f of now.fields) {
      const input = $("f-" + f.name);
      if (f.kind === "file") {
        if (t.files[f.name]) { files.push(t.files[f.name]); args.push("-" + f.name, t.files[f.name][0]); }
        continue;
      }
      const text = f.kind === "yes" ? String(input.checked) : input.value.trim();
      t.text[f.name] = text;
      if (text !== f.value) args.push(...(f.kind === "yes" ? ["-" + f.name + "=" + text] : ["-" + f.name, text]));
    }
    return { args, files };
  };
  const quoted = (a) => /^[\w.\/=-]+$/.test(a) ? a : "'" + a.replaceAll("'", "'\\''") + "'";
  const ask = async () => {
    const q = now, { args, files } = command();
    const m = await engine.ask({ do: "ask", name: q.name, args }, null, files);
    if (now !== q || m.stopped) return;
    answered(q, args, m.sheet);
  };
  const answered = (q, args, s) => {
    for (const f of q.fields) {
      $("f-" + f.name).removeAttribute("aria-invalid");
      $("f-" + f.name + "-wrong").textContent = "";
    }
    $("faults").replaceChildren(...list(s.faults).map((f) => {
      const field = f.flag && $("f-" + f.flag);
      if (!field) return make("li", {}, f.says);
      field.setAttribute("aria-invalid", "true");
      $("f-" + f.flag + "-wrong").textContent = f.says;
      return make("li", {}, make("a", { href: "#f-" + f.flag, "data-field": f.flag }, f.flag.replaceAll("-", " ")), ": " + f.says);
    }));
    $("answer").classList.toggle("old", list(s.faults).length > 0);
    performance.mark("answered");
    if (list(s.faults).length) return;
    $("answer").replaceChildren(
      make("h2", {}, "Answer"),
      make("dl", { class: "results" }, ...list(s.results).flatMap((r) => [make("dt", {}, r.name), make("dd", {}, r.text)])),
      make("ul", { class: "notes" + (s.code ? " bad" : "") }, ...list(s.notes).map((n) => make("li", {}, n))),
      s.picture ? drawn(make("figure"), s.picture) : "",
      ...list(s.tables).map((t) => table(t.name, t.header, list(t.rows))),
      s.published ? make("p", { class: "soft" }, "Published: " + s.published) : "",
      make("details", { id: "working" }, make("summary", {}, "Working: " + many(list(s.working).length, "line", "lines")), ...list(s.working).map((w) => make("p", { class: "working" }, make("b", {}, w.name), make("br"), make("code", {}, w.text), make("br"), make("span", { class: "soft" }, w.source)))),
      make("details", {}, make("summary", {}, "As the command prints it"), make("p", {}, make("code", {}, ["go run ./examples/" + q.name, ...args.map(quoted)].join(" "))), make("pre", { tabindex: "0", id: "printed" }, s.text)));
  };
  const askSoon = later(120, () => now && ask());
  $("form").addEventListener("submit", (e) => { e.preventDefault(); ask(); });
  $("form").addEventListener("input", async (e) => {
    if (e.target.type === "file") {
      const f = e.target.files[0];
      typed[now.name].files[e.target.name] = f ? [f.name, await f.text()] : undefined;
    }
    askSoon();
  });
  $("defaults").addEventListener("click", () => { delete typed[now.name]; pick(now); });
  $("find").addEventListener("input", listed);

  // ---- a plan
  const plan = { knobs: [], set: {}, asked: 0 };
  const samples = [["demo", "the demo: three zones, proved"], ["demo-as-tally", "the demo, written as a tally"], ["seven-pins-too-few", "a mistake: seven pins are too few"], ["setting-shears-isolation-valve", "a mistake: setting can shear an isolation valve"], ["packer-fluid-swapped", "a mistake: the packer won't set"], ["sleeves-in-wrong-order", "a mistake: sleeves in the wrong order"], ["test-passes-casing-rating", "a mistake: a test passes the casing's rating"], ["cold-injection-parts-release", "a mistake: cold injection parts the release"], ["seals-leave-the-bore", "a mistake: seals leave their bore"], ["sleeve-opened-overbalanced", "a mistake: a sleeve opened overbalanced"], ["annulus-test-with-port-shut", "a mistake: an annulus tested with its port shut"], ["begin", "a small plan to begin with, field units"], ["begin-si", "a small plan to begin with, SI"]];
  $("sample").append(...samples.map(([v, t]) => make("option", { value: v }, t)), make("option", { value: "", hidden: true }, "your own"));
  const kinds = { pins: "Pins", density: "Densities", pressure: "Formation pressures", gauge: "Gauges: shows too much by" };
  const opened = async (text) => {
    $("text").value = text;
    plan.set = {};
    const m = await engine.ask({ do: "knobs", plan: text, units: $("units").value });
    plan.knobs = list(m.knobs);
    const knobs = Object.entries(kinds).map(([kind, head]) => {
      const of = plan.knobs.filter((k) => k.kind === kind);
      return of.length ? make("details", { open: kind === "pins" || kind === "density" }, make("summary", {}, head), ...of.map(knob)) : "";
    });
    $("knobs").replaceChildren(...knobs);
    walk();
  };
  const knob = (k) => {
    const n = plan.knobs.indexOf(k), id = "k-" + n;
    const range = make("input", { type: "range", min: k.least, max: k.greatest, step: k.step, value: k.now, "aria-labelledby": id + "-name", id: id + "-slider" });
    const text = make("input", { type: "text", id, spellcheck: "false", "aria-labelledby": id + "-name" });
    text.value = k.value;
    const tail = k.value.match(/\s\+\/-.*$/);
    range.addEventListener("input", () => {
      text.value = k.kind === "pins" ? range.value : Number(range.value) + " " + k.unit + (tail ? tail[0] : "");
      turned(k, text.value);
    });
    text.addEventListener("input", () => {
      const v = parseFloat(text.value);
      if (v >= k.least && v <= k.greatest) range.value = v;
      turned(k, text.value);
    });
    return make("div", { class: "knob" }, make("span", { id: id + "-name" }, k.name), range, text);
  };
  const turned = (k, text) => {
    if (text.trim() === k.value) delete plan.set[k.path]; else plan.set[k.path] = [k.kind, text.trim()];
    walkSoon();
  };
  const busy = (words, share) => {
    $("work").textContent = words;
    $("progress").hidden = $("stop").hidden = share === undefined;
    if (share) $("progress").value = share; else $("progress").removeAttribute("value");
  };
  const walk = async () => {
    const changes = Object.entries(plan.set), n = ++plan.asked;
    busy("walking the plan", 0);
    const m = await engine.ask({ do: "plan", plan: $("text").value, units: $("units").value, step: Number($("step").value),
      set: changes.filter(([, [kind]]) => kind !== "gauge").map(([p, [, v]]) => p + " = " + v),
      gauge: changes.filter(([, [kind]]) => kind === "gauge").map(([p, [, v]]) => p + " = " + v) },
    (part) => {
      if (n !== plan.asked) return;
      if (part.view) shown(part.view);
      else if (part.step) $("step-" + part.step).querySelector(".windows").replaceChildren(...windows(part.windows));
      else busy(part.doing, part.share);
    });
    if (n !== plan.asked) return;
    if (m.stopped) return busy("Stopped: verdict and margins stand, windows are missing.");
    told("plan-faults", list(m.faults));
    for (const id of ["programme", "verdict", "drawing", "steps"]) $(id).classList.toggle("old", !!m.faults);
    busy(m.faults ? "This can't be walked; what is wrong is listed." : "");
    if (m.view) shown(m.view);
  };
  const walkSoon = later(60, walk);
  const steps = (v) => {
    const s = $("step");
    s.max = v.steps.length;
    s.value = v.step;
    const name = v.step + ", " + v.steps[v.step - 1].name;
    s.setAttribute("aria-valuetext", name);
    $("step-name").textContent = name;
  };
  const windows = (all) => list(all).map((w) => make("div", { class: "window" }, make("p", {}, make("b", {}, w.head + ": "), w.words), w.drawing ? drawn(make("div"), w.drawing) : "", list(w.edges).length ? make("p", { class: "soft" }, w.edges.join("; ")) : ""));
  const shown = (v) => {
    told("plan-faults", []);
    for (const id of ["programme", "drawing", "steps"]) $(id).classList.remove("old");
    $("verdict").className = "verdict " + (v.verdict === "proved" ? "good" : "bad");
    $("verdict").textContent = v.sentence;
    $("findings").replaceChildren(...list(v.notes).map((n) => make("p", { class: "soft" }, n)), ...list(v.findings).map((f) => f.follows
      ? make("div", { class: "finding after" }, make("b", {}, `Step ${f.step}, ${f.name}`), `: ${f.device}: ${f.says} (${f.numbers}). Follows from ${f.follows}: mend that first.`)
      : make("div", { class: "finding" }, make("b", {}, `Step ${f.step}, ${f.name}`), ": " + f.kind, make("br"), f.device + ": " + f.says,
        make("dl", {}, ...[["numbers", f.numbers], ["assumed", f.assumed], ["cure", f.cure || (v.windows ? "" : "is being looked for")], ["lasts", f.until && "through " + f.until]].filter(([, t]) => t).flatMap(([h, t]) => [make("dt", {}, h), make("dd", {}, t)])))));
    $("tight").replaceChildren(make("h3", {}, "Tightest margins, of " + many(v.limits, "limit", "limits")),
      table("Tightest margins", ["share", "left", "limit", "it is of", "least in"], list(v.tightest).map((m) => [m.share, m.left, m.limit, m.kind, m.where])));
    const c = v.changes;
    $("changes").replaceChildren(...(c ? [make("h3", {}, "What has changed since " + c.since), table("What has changed", ["what", "step", "", "before", "now"],
      [["verdict", c.verdict], ["finding", c.findings], ["window", v.windows ? c.windows : []], ["margin", c.margins]].flatMap(([head, all]) => list(all).map((x) => [head, x.step ? String(x.step) : "", x.what, x.before, x.now])))] : []));
    steps(v);
    drawn($("well"), v.well);
    $("fluids").replaceChildren(...list(v.fluids).map((f, i) => drawn(make("li"), `<svg viewBox="0 0 26 14" aria-hidden="true"><rect x="1" y="1" width="24" height="12" class="f${i % 8}"/></svg>`)).map((li, i) => (li.append(v.fluids[i]), li)));
    $("steps").replaceChildren(make("h3", {}, "Steps", v.windows ? "" : make("span", { class: "soft" }, " (windows are being looked for)")), ...v.steps.map((s, i) =>
      make("details", { class: "step", open: s.class === "bad" || i + 1 === v.step, id: "step-" + (i + 1) }, make("summary", {}, `${i + 1}. ${s.name} `, make("b", { class: s.class }, s.mark)),
        s.note ? make("p", {}, s.note) : "",
        ...[["apply", s.apply], ["moves", s.moves]].flatMap(([head, all]) => list(all).length ? [make("p", {}, make("i", {}, head + ": "), all.join("; "))] : []),
        make("div", { class: "windows" }, ...windows(s.windows)))));
    $("rest").replaceChildren(make("details", {}, make("summary", {}, "Not checked by this plan: " + many(list(v.unchecked).length, "thing", "things")), make("p", {}, "Silence is not consent."), make("ul", {}, ...list(v.unchecked).map((x) => make("li", {}, x)))),
      v.text ? make("details", {}, make("summary", {}, "As the command prints it"), make("pre", { tabindex: "0", id: "plan-printed" }, v.text)) : "");
  };
  const sampled = async () => opened((await engine.ask({ do: "plans", name: $("sample").value })).plan);
  $("sample").addEventListener("change", sampled);
  const own = later(400, () => opened($("text").value));
  $("text").addEventListener("input", () => { $("sample").value = ""; own(); });
  $("file").addEventListener("change", async (e) => { if (e.target.files[0]) { $("sample").value = ""; opened(await e.target.files[0].text()); } });
  $("units").addEventListener("change", () => opened($("text").value));
  $("step").addEventListener("input", () => walkSoon());
  $("undo").addEventListener("click", () => opened($("text").value));
  $("stop").addEventListener("click", () => engine.stop());
  $("knobs").addEventListener("submit", (e) => e.preventDefault());

  // ---- where one is
  const go = async () => {
    const where = decodeURIComponent(location.hash.slice(1));
    if (where === "main" || where.startsWith("f-")) return;
    const aPlan = where === "plan";
    $("ask").hidden = aPlan;
    $("plan").hidden = !aPlan;
    for (const [id, on] of [["to-ask", !aPlan], ["to-plan", aPlan]]) if (on) $(id).setAttribute("aria-current", "page"); else $(id).removeAttribute("aria-current");
    if (aPlan) {
      document.title = "A whole programme";
      if (!$("text").value) sampled();
      return;
    }
    const all = questions.flatMap((g) => g.of);
    const q = all.find((x) => x.name === where) || now || all.find((x) => x.name === "pins");
    if (q !== now) pick(q);
  };
  document.addEventListener("click", (e) => {
    const field = e.target.dataset && e.target.dataset.field;
    if (field) { e.preventDefault(); $("f-" + field).focus(); }
  });
  window.addEventListener("hashchange", go);
  (async () => {
    engine.start();
    questions = JSON.parse($("asked").textContent);
    go();
    await engine.ready;
    $("state").textContent = "";
    performance.mark("ready");
  })();
})();
