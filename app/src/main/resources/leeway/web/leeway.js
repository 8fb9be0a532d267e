/* Improves the pages; every page works without it. */
(() => {
  "use strict";
  if (window.Idiomorph) {
    Idiomorph.defaults.ignoreActiveValue = true;
    /* what a person opened or closed stays so */
    Idiomorph.defaults.callbacks.beforeAttributeUpdated = (name, node) => !(name === "open" && node.tagName === "DETAILS" && node.dataset.touched);
  }
  document.documentElement.classList.add("js");

  /* the server stops working out what this page asked before when it asks anew */
  const own = [...crypto.getRandomValues(new Uint8Array(12))].map(b => b.toString(16).padStart(2, "0")).join("");
  document.addEventListener("htmx:configRequest", e => { e.detail.headers["Leeway-Page"] = own; });

  /* on a small screen the answer comes first and the form is folded; one without an answer stays open */
  const fold = document.getElementById("fold");
  if (fold && window.matchMedia("(max-width: 60rem)").matches && !document.querySelector(".answer.waiting")) { fold.open = false; fold.dataset.touched = "1"; }

  document.addEventListener("toggle", e => { if (e.target.tagName === "DETAILS") e.target.dataset.touched = "1"; }, true);

  /* a button that downloads is sent by the browser itself */
  document.addEventListener("submit", e => {
    if (e.submitter && e.submitter.hasAttribute("data-plain")) e.stopImmediatePropagation();
  }, true);

  /* the figures that moved are marked for two seconds */
  const figures = () => new Map([...document.querySelectorAll(".answer .big, td.fig, dd.fig")].map((n, i) => [n.id || i, n.textContent]));
  let before = new Map();
  document.addEventListener("htmx:beforeSwap", () => { before = figures(); });
  document.addEventListener("htmx:afterSettle", () => {
    if (before.size === 0) return;
    [...document.querySelectorAll(".answer .big, td.fig, dd.fig")].forEach((n, i) => {
      const old = before.get(n.id || i);
      if (old !== undefined && old !== n.textContent) {
        n.classList.remove("moved");
        void n.offsetWidth;
        n.classList.add("moved");
      }
    });
    before = new Map();
    const message = document.getElementById("message");
    if (message && !document.querySelector(".htmx-request")) message.replaceChildren();
  });
  document.addEventListener("htmx:beforeRequest", () => { const m = document.getElementById("message"); if (m) m.replaceChildren(); });

  /* the server is gone: say so where it is heard */
  document.addEventListener("htmx:sendError", () => {
    const m = document.getElementById("message");
    if (m) { const p = document.createElement("p"); p.className = "refused"; p.textContent = m.dataset.gone; m.replaceChildren(p); }
  });

  /* after an item was added or moved, its first field or its button keeps the focus */
  document.addEventListener("htmx:afterSettle", e => {
    const act = e.detail && e.detail.requestConfig && e.detail.requestConfig.parameters && e.detail.requestConfig.parameters.do;
    if (typeof act !== "string") return;
    const [what, path] = [act.slice(0, act.indexOf(":")), act.slice(act.indexOf(":") + 1)];
    if (what === "add") {
      const items = document.querySelectorAll("#g-" + CSS.escape(path.replace(/[^A-Za-z0-9]+/g, "-")) + " > div > .item");
      const field = items.length && [...items[items.length - 1].querySelectorAll("input:not([type=hidden]), select")].find(f => !f.value);
      if (field) field.focus();
    } else if (what === "same") {
      const field = document.getElementsByName("f:" + path.slice(0, path.lastIndexOf("=")))[0];
      if (field) field.focus();
    } else if (what === "place") {
      const m = path.match(/^(.*)\/(\d+)\/(\d+)$/);
      const grip = m && [...document.querySelectorAll(".grip")].find(g => g.dataset.grip === m[1] + "/" + m[3]);
      if (grip) grip.focus();
    } else if (what === "up" || what === "down") {
      const m = path.match(/^(.*)\/(\d+)$/);
      const now = m && m[1] + "/" + (Number(m[2]) + (what === "up" ? -1 : 1));
      const pair = now && [...document.querySelectorAll("button[name=do]")].filter(b => b.value === what + ":" + now || b.value === (what === "up" ? "down:" : "up:") + now).filter(b => !b.disabled);
      if (pair && pair.length) (pair.find(b => b.value.startsWith(what)) || pair[0]).focus();
    }
  });

  /* items of a list are dragged by their grip, or moved with the arrow keys while it has the focus */
  const act = (form, what) => {
    const b = document.createElement("button");
    b.name = "do"; b.value = what; b.hidden = true;
    form.append(b); b.click(); b.remove();
  };
  const siblings = item => [...item.parentElement.children].filter(n => n.classList.contains("item"));
  let carried = null;
  const targetOf = y => {
    const others = siblings(carried.item).filter(n => n !== carried.item);
    return others.filter(n => { const r = n.getBoundingClientRect(); return y > r.top + r.height / 2; }).length;
  };
  const drop = () => {
    if (!carried) return;
    carried.item.classList.remove("carried");
    carried.item.style.transform = "";
    siblings(carried.item).forEach(n => n.classList.remove("dropbefore", "dropafter"));
    carried = null;
  };
  document.addEventListener("pointerdown", e => {
    const grip = e.target.closest && e.target.closest(".grip");
    if (!grip || e.button !== 0) return;
    const item = grip.closest(".item");
    carried = { item, grip, y: e.clientY + scrollY, from: siblings(item).indexOf(item), to: siblings(item).indexOf(item) };
    grip.setPointerCapture(e.pointerId);
  });
  document.addEventListener("pointermove", e => {
    if (!carried) return;
    carried.item.classList.add("carried");
    carried.item.style.transform = "translateY(" + (e.clientY + scrollY - carried.y) + "px)";
    carried.to = targetOf(e.clientY);
    const others = siblings(carried.item).filter(n => n !== carried.item);
    others.forEach((n, i) => {
      n.classList.toggle("dropbefore", i === carried.to && carried.to !== carried.from);
      n.classList.toggle("dropafter", i === others.length - 1 && carried.to === others.length && carried.to !== carried.from);
    });
    if (e.clientY < 60) scrollBy(0, -12); else if (e.clientY > innerHeight - 60) scrollBy(0, 12);
    e.preventDefault();
  });
  document.addEventListener("pointerup", () => {
    if (!carried) return;
    const { grip, from, to } = carried;
    drop();
    if (from !== to) act(grip.form, "place:" + grip.dataset.grip + "/" + to);
  });
  document.addEventListener("pointercancel", drop);
  document.addEventListener("keydown", e => {
    if (e.key === "Escape" && carried) { drop(); return; }
    if (!e.target.classList || !e.target.classList.contains("grip") || (e.key !== "ArrowUp" && e.key !== "ArrowDown")) return;
    e.preventDefault();
    const item = e.target.closest(".item");
    const from = siblings(item).indexOf(item);
    const to = from + (e.key === "ArrowUp" ? -1 : 1);
    if (to >= 0 && to < siblings(item).length) act(e.target.form, "place:" + e.target.dataset.grip + "/" + to);
  });

  /* a rehearsal is stepped with the arrow keys, and with those of a presenter's clicker while a step has the focus */
  document.addEventListener("keydown", e => {
    if (e.altKey || e.ctrlKey || e.metaKey || e.shiftKey || e.defaultPrevented) return;
    const steps = document.querySelector("#fault .steps");
    if (!steps || e.target.closest("input, select, textarea, .scroll")) return;
    const near = steps.contains(document.activeElement);
    const id = e.key === "ArrowRight" || near && e.key === "PageDown" ? "next" : e.key === "ArrowLeft" || near && e.key === "PageUp" ? "back" : "";
    const step = id && document.getElementById(id);
    if (!step) return;
    e.preventDefault();
    if (step.hasAttribute("href")) step.click();
  });

  /* hands that were counted are kept at once, with the moment at which they were */
  document.addEventListener("change", e => {
    if (e.target.name === "v" && e.target.form && e.target.form.id === "class") e.target.form.requestSubmit(document.getElementById("note"));
  });

  /* a picture is drawn for wide and for narrow pages; the one that is seen */
  const seen = figure => [...figure.querySelectorAll("svg")].find(s => s.getBoundingClientRect().width > 0);

  /* the point of the map goes where one puts it; sliders beside it, and the fields, do the same */
  document.addEventListener("input", e => {
    const d = e.target.dataset;
    if (!d || !d.turns) return;
    const figure = e.target.closest(".map");
    const svg = seen(figure);
    const frame = svg.querySelector(".frame");
    const along = Math.min(1, Math.max(0, (Number(e.target.value) / figure.dataset[d.turns + "t"] - figure.dataset[d.turns + "0"]) / (figure.dataset[d.turns + "1"] - figure.dataset[d.turns + "0"])));
    const box = { x: Number(frame.getAttribute("x")), y: Number(frame.getAttribute("y")), w: Number(frame.getAttribute("width")), h: Number(frame.getAttribute("height")) };
    svg.querySelectorAll(".here, .halo").forEach(c => d.turns === "x" ? c.setAttribute("cx", box.x + along * box.w) : c.setAttribute("cy", box.y + (1 - along) * box.h));
    const out = e.target.parentElement.querySelector("output");
    if (out) out.textContent = e.target.value + " " + d.unit;
  });
  document.addEventListener("change", e => {
    const d = e.target.dataset;
    if (!d || !d.turns) return;
    e.stopImmediatePropagation();
    const f = document.getElementsByName("f:settings/" + d.key)[0];
    if (f) { f.value = e.target.value; f.dispatchEvent(new Event("change", { bubbles: true })); }
  }, true);

  const place = (figure, e, done) => {
    const svg = seen(figure);
    const frame = svg.querySelector(".frame").getBoundingClientRect();
    const d = figure.dataset;
    const px = Math.min(1, Math.max(0, (e.clientX - frame.left) / frame.width));
    const py = Math.min(1, Math.max(0, (frame.bottom - e.clientY) / frame.height));
    const box = svg.viewBox.baseVal;
    const scale = svg.getBoundingClientRect().width / box.width;
    svg.querySelectorAll(".here, .halo").forEach(c => {
      c.setAttribute("cx", (frame.left + px * frame.width - svg.getBoundingClientRect().left) / scale);
      c.setAttribute("cy", (frame.top + (1 - py) * frame.height - svg.getBoundingClientRect().top) / scale);
    });
    if (!done) return;
    const set = (key, value) => { const f = document.getElementsByName("f:settings/" + key)[0]; if (f) f.value = String(Math.round(value)); return f; };
    set(d.y, (Number(d.y0) + py * (d.y1 - d.y0)) * d.yt);
    const x = set(d.x, (Number(d.x0) + px * (d.x1 - d.x0)) * d.xt);
    if (x) x.dispatchEvent(new Event("change", { bubbles: true }));
  };
  let dragged = null;
  document.addEventListener("pointerdown", e => {
    const figure = e.target.closest && e.target.closest("#bench .map");
    if (!figure || e.button !== 0 || !e.target.closest("svg")) return;
    dragged = figure;
    place(figure, e, false);
    e.preventDefault();
  });
  document.addEventListener("pointermove", e => { if (dragged) place(dragged, e, false); });
  document.addEventListener("pointerup", e => { if (dragged) place(dragged, e, true); dragged = null; });

  /* sliders show their value while they move */
  document.addEventListener("input", e => {
    if (e.target.type !== "range") return;
    const out = e.target.id && document.querySelector("output[for='" + e.target.id + "']");
    if (out) out.textContent = e.target.value + (e.target.dataset.unit ? " " + e.target.dataset.unit : "");
  });
})();
