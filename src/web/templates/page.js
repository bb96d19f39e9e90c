// What a script adds to the page: the answer while somebody types, faults at their fields, sliders, the map, and edits in place.
// Without it every button sends the form and gets a page. Nothing is worked out here.
"use strict";

(() => {
  const wait = 150;
  const reach = 4;
  let timer = 0;
  let asked = null;
  let changed = false;
  let sent = false;

  const by = (id) => document.getElementById(id);
  const brief = () => by("brief");

  /** What the form holds, as it is posted; more pairs may be added. */
  const held = (more = {}) => {
    const pairs = new URLSearchParams();
    for (const [name, value] of new FormData(brief())) {
      if (typeof value === "string") pairs.append(name, value);
    }
    for (const [name, value] of Object.entries(more)) pairs.append(name, value);
    return pairs;
  };

  const post = (where, signal, more) =>
    fetch(where, { method: "POST", body: held(more), signal, headers: { Accept: "application/json" } });

  /** Puts the faults at their fields; what no field shows stands above the form. */
  const mark = (faults, said) => {
    const left = { ...faults };
    for (const place of document.querySelectorAll("[data-fault]")) {
      const told = left[place.dataset.fault] || [];
      delete left[place.dataset.fault];
      const text = told.join(". ");
      if (place.textContent !== text) place.textContent = text;
      const field = place.closest(".field");
      if (!field) continue;
      field.classList.toggle("faulty", told.length > 0);
      const fold = told.length ? field.closest("details") : null;
      if (fold) fold.open = true;
      const input = field.querySelector("input, select");
      if (told.length) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    const list = by("faults-elsewhere");
    list.replaceChildren(...Object.values(left).flat().map((told) => {
      const item = document.createElement("li");
      item.textContent = told;
      return item;
    }));
    const count = Object.keys(faults).length;
    by("faults-said").textContent = count ? said : "";
    by("faults").hidden = count === 0;
  };

  const say = (words) => {
    const said = by("said");
    if (said.textContent !== words) said.textContent = words;
    const bar = by("bar");
    bar.classList.toggle("told", words !== "");
    bar.querySelector("a").textContent = words;
  };

  const busy = (is) => by("answer").setAttribute("aria-busy", is ? "true" : "false");

  /** One answer; whether the brief could be read. */
  const take = async (how, signal) => {
    const got = await post(`/answer?how=${how}`, signal);
    if (!got.ok) {
      say(new DOMParser().parseFromString(await got.text(), "text/html").body.textContent.trim());
      return false;
    }
    const piece = await got.json();
    mark(piece.faults, piece.said);
    const found = by("found");
    if (piece.html) found.innerHTML = piece.html;
    const stale = piece.html === "" && found.querySelector(".result") !== null;
    found.classList.toggle("stale", stale);
    say(stale ? `${piece.said} What stands below is the answer before.` : piece.said);
    return piece.html !== "";
  };

  const ask = async () => {
    if (asked) asked.abort();
    asked = new AbortController();
    const { signal } = asked;
    busy(true);
    try {
      if (await take("first", signal)) {
        busy(false);
        await take("sketch", signal);
        await take("whole", signal);
      }
      busy(false);
    } catch (fault) {
      if (fault.name === "AbortError") return;
      busy(false);
      say("The page does not answer; is the program still running?");
    }
  };

  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(ask, wait);
  };

  /** The form as the server sends it after a button, put in place of the one that is there. */
  const edit = async (button) => {
    const got = await fetch("/edit", { method: "POST", body: held({ [button.name]: button.value }) });
    const page = new DOMParser().parseFromString(await got.text(), "text/html");
    const fresh = page.getElementById("brief");
    if (!fresh) return;
    const open = new Set([...document.querySelectorAll("details[open] > summary")].map(where));
    brief().replaceWith(document.importNode(fresh, true));
    for (const summary of document.querySelectorAll("details > summary")) {
      if (open.has(where(summary))) summary.parentElement.open = true;
    }
    const on = by(page.body.dataset.focus || "") || by("add-axis");
    const within = on.closest("details");
    if (within) within.open = true;
    on.focus();
    dress();
    soon();
  };

  /** Where a section stands, so that it is found again in a fresh form. */
  const where = (summary) => {
    const card = summary.closest(".card");
    return `${card ? card.getAttribute("aria-labelledby") : ""} ${summary.firstChild.textContent.trim()}`;
  };

  /** What follows a requirement of an axis that is turned, as where the recommendation turns is asked: by the ends of their names. */
  const followers = {
    travel: /^(duty\.\d+\.stroke|moves\.\d+\.distance)$/,
    speed: /^(duty\.\d+\.speed|moves\.\d+\.speed|cutting-speed)$/,
  };

  /** A number and its unit; none where there is no positive number. */
  const quantity = (text) => {
    const parts = /^\s*([0-9.]+(?:e[-+]?[0-9]+)?)\s*(.*)$/i.exec(text);
    return parts && Number(parts[1]) > 0 ? { number: Number(parts[1]), unit: parts[2] } : null;
  };

  const written = (number, unit) => `${Number(number.toPrecision(3))}${unit ? ` ${unit}` : ""}`;

  /** The fields of an axis that follow one that is turned, with what they held; those in another unit stay. */
  const following = (axis, of, base) => {
    const begin = `axes.${axis}.`;
    const inputs = [...brief().elements].filter((field) => field.name.startsWith(begin));
    const fields = inputs.filter((field) => followers[of].test(field.name.slice(begin.length)));
    return fields.flatMap((field) => {
      const held = quantity(field.value);
      return held && held.unit === base.unit ? [{ field, ...held }] : [];
    });
  };

  /** A slider below a field: turns its number, and shows on which stretch which drive wins. */
  const slide = (place) => {
    if (place.firstChild) return;
    const input = by(place.dataset.for);
    const name = document.querySelector(`label[for="${input.id}"]`).firstChild.textContent.trim();
    const axis = place.closest("[data-axis]").dataset.axis;
    const range = Object.assign(document.createElement("input"), { type: "range", min: -1, max: 1, step: 0.01, value: 0 });
    range.setAttribute("aria-label", `${name}, from a quarter to four times`);
    const strip = Object.assign(document.createElement("div"), { className: "strip", hidden: true });
    strip.setAttribute("aria-hidden", "true");
    const told = Object.assign(document.createElement("div"), { className: "turned" });
    told.setAttribute("aria-live", "polite");
    let base = null;
    let drawn = null;
    let along = [];
    const begin = () => {
      base = quantity(input.value);
      along = base ? following(axis, place.dataset.of, base) : [];
      return base !== null;
    };
    const draw = async () => {
      if (!begin()) return;
      if (drawn) drawn.abort();
      drawn = new AbortController();
      told.textContent = "Looking where the recommendation turns …";
      try {
        const got = await post("/turns", drawn.signal, { "page-axis": axis, "page-of": place.dataset.of });
        if (!got.ok) {
          told.textContent = "";
          return;
        }
        const piece = await got.json();
        strip.replaceChildren(...piece.pieces.map((part) => {
          const span = document.createElement("span");
          span.className = part.family;
          span.style.flexGrow = String(Math.max(part.to - part.from, 0));
          span.style.flexBasis = "0";
          span.title = part.words;
          span.textContent = part.letter;
          return span;
        }));
        strip.hidden = false;
        told.innerHTML = piece.html;
      } catch (fault) {
        if (fault.name !== "AbortError") told.textContent = "";
      }
    };
    range.addEventListener("focus", () => {
      if (!base || strip.hidden) draw();
    });
    range.addEventListener("input", () => {
      if (!base && !begin()) return;
      const value = base.number * reach ** Number(range.value);
      input.value = written(value, base.unit);
      // as long as the whole it follows; else it only gives way
      for (const { field, number, unit } of along) {
        field.value = written(number >= base.number ? value : Math.min(number, value), unit);
      }
      range.setAttribute("aria-valuetext", input.value);
      changed = true;
      soon();
    });
    // what is typed by hand is the middle of a new way
    input.addEventListener("input", () => {
      base = null;
      range.value = 0;
      strip.hidden = true;
      told.textContent = "";
    });
    place.append(range, strip, told);
    place.hidden = false;
  };

  const map = async (button) => {
    const axis = button.dataset.map;
    const place = document.querySelector(`[data-mapped="${axis}"]`);
    place.textContent = "Drawing the map; this takes some seconds …";
    try {
      const got = await post("/map", undefined, { "page-axis": axis });
      if (got.ok) place.innerHTML = (await got.json()).html;
      else place.textContent = "The map cannot be drawn: put the brief right first, or try again in a few seconds.";
    } catch {
      place.textContent = "The page does not answer; is the program still running?";
    }
  };

  /** What needs a script is shown, each time the form is new. */
  const dress = () => {
    document.querySelectorAll(".slide").forEach(slide);
    document.querySelectorAll(".script").forEach((button) => { button.hidden = false; });
  };

  document.addEventListener("input", (event) => {
    if (!event.target.closest("#brief") || event.target.type === "range") return;
    changed = true;
    if (!event.target.closest("#check") && event.target.id !== "other") soon();
  });
  document.addEventListener("change", (event) => {
    if (event.target.id === "units") soon();
  });
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.map !== undefined) map(button);
  });
  document.addEventListener("submit", (event) => {
    const button = event.submitter;
    if (event.target.id !== "brief" || !button) return;
    if (button.name === "page-do") {
      event.preventDefault();
      edit(button);
    } else if (!button.hasAttribute("formaction")) {
      event.preventDefault();
      ask();
      by("answer").focus();
    }
    if (button.getAttribute("formaction") === "/take/brief.yaml") changed = false;
    // what is taken away leaves the page where it is
    sent = true;
    setTimeout(() => { sent = false; }, 1000);
  });
  window.addEventListener("beforeunload", (event) => {
    if (changed && !sent) event.preventDefault();
  });

  dress();
  const focus = by(document.body.dataset.focus || "");
  if (focus) focus.focus();
  if (document.body.dataset.begins) ask();
})();
