// The form: each field is named as the member of the request that it fills, in dots (`geometry.thicknessMm`), and so is the
// state in the address. A fault's pointer is the same name in slashes.

import { byId, el } from "./dom.js";
import { say } from "./words.js";
import { read, symbol, written } from "./units.js";

const form = byId("form");
const steps = byId("steps");
const extras = byId("extras");

/** Members that are texts although they may look like numbers. */
const TEXTS = new Set(["parameterSet", "rule", "food.id", "food.textureClass"]);

/** Members of the process window alone. */
const OF_WINDOW = new Set(["lowestSetpointC", "highestSetpointC", "availableS", "stepK", "momentToleranceS"]);

/** Sizes by shape, as the contract has them. */
const SIZES = {
  slab: ["thicknessMm", "massG"],
  brick: ["thicknessMm", "widthMm", "lengthMm", "massG"],
  cylinder: ["diameterMm", "lengthMm", "massG"],
  sphere: ["diameterMm", "massG"],
  egg: ["diameterMm", "lengthMm", "massG"],
};

/** Members of a step, with what they usually are. */
const STEPS = {
  sear: [["method", "pan"], ["secondsPerSide", 45], ["bothSidesAtOnce", ""]],
  rest: [["durationS", 300]],
  chill: [["medium", "iceWater"], ["durationS", ""]],
  store: [["temperatureC", 3], ["days", 3]],
  reheat: [["setpointC", 60], ["durationS", ""]],
  bath: [["setpointC", 60], ["durationS", 3600]],
  unheated: [["durationS", 600], ["foundC", ""]],
};

const WORDS = {
  method: ["pan", "coals", "torch", "hotOil"],
  medium: ["iceWater", "coldWater", "blastAir", "fridge"],
};

const QUANTITY_OF_STEP = {
  durationS: "time", secondsPerSide: "s", setpointC: "C", temperatureC: "C", foundC: "C", days: "days",
};

/** Members of the request that have no field, by name; they came with the address. */
let beside = {};

function controls() {
  return [...form.elements].filter((control) => control.name && control.name !== "units");
}

/** The field of a member, if there is one. */
export function field(name) {
  return controls().find((control) => control.name === name);
}

function value(control) {
  if (control.type === "checkbox") {
    return control.checked ? true : "";
  }
  if (control.dataset.kind === "food") {
    return control.dataset.id ?? control.value.trim();
  }
  if (control.tagName === "SELECT") {
    return control.value === "true" ? true : control.value;
  }
  return control.dataset.value !== undefined ? JSON.parse(control.dataset.value) : "";
}

/** Members that were filled in, by name. */
export function answers() {
  const flat = {};
  for (const control of controls()) {
    const filled = value(control);
    if (filled !== "" && !control.closest(".field[hidden]")) {
      flat[control.name] = filled;
    }
  }
  return { ...flat, ...beside };
}

/** Notes what someone wrote, in the unit of the contract. */
function note(control) {
  const text = control.value;
  if (text.trim() === "") {
    delete control.dataset.value;
  } else {
    control.dataset.value = JSON.stringify(read(text, control.dataset.quantity));
  }
}

/** Shows what a field holds. */
function show(control) {
  if (control.dataset.value !== undefined) {
    control.value = written(JSON.parse(control.dataset.value), control.dataset.quantity);
  }
}

function set(control, filled) {
  if (control.type === "checkbox") {
    control.checked = filled === true;
  } else if (control.dataset.kind === "food") {
    control.dataset.id = String(filled);
    control.value = String(filled);
  } else if (control.tagName === "SELECT") {
    // What the list does not hold is asked all the same: the service says what it takes.
    const word = String(filled);
    if (![...control.options].some((option) => option.value === word)) {
      control.append(el("option", { value: word }, word));
    }
    control.value = word;
  } else {
    control.dataset.value = JSON.stringify(filled);
    show(control);
  }
}

function clear(control) {
  if (control.type === "checkbox") {
    control.checked = false;
  } else if (control.tagName === "SELECT") {
    control.selectedIndex = 0;
  } else {
    delete control.dataset.value;
    delete control.dataset.id;
    control.value = "";
  }
}

/** Fills the whole form. */
export function fillIn(flat) {
  controls().forEach(clear);
  steps.replaceChildren();
  beside = {};
  const kinds = {};
  for (const [name, filled] of Object.entries(flat)) {
    const step = /^then\.(\d+)\.step$/.exec(name);
    if (step) {
      kinds[step[1]] = filled;
    }
  }
  Object.keys(kinds)
    .sort((a, b) => a - b)
    .filter((n) => STEPS[kinds[n]] !== undefined)
    .forEach((n) => addStep(kinds[n], false));
  for (const [name, filled] of Object.entries(flat)) {
    const control = field(name);
    if (control) {
      set(control, filled);
      const folded = control.closest("details");
      if (folded) {
        folded.open = true;
      }
    } else {
      beside[name] = filled;
    }
  }
  showBeside();
  fit();
}

function showBeside() {
  extras.hidden = Object.keys(beside).length === 0;
  extras.querySelector("ul").replaceChildren(
    ...Object.entries(beside).map(([name, filled]) =>
      el("li", { "data-part": name },
        el("code", {}, name + " = " + filled), " ",
        el("button", {
          type: "button",
          onclick: () => {
            delete beside[name];
            showBeside();
            changed();
          },
        }, say("TRIAL_REMOVE")))));
}

/** Shows the sizes that a shape has, and each unit. */
export function fit() {
  const sizes = SIZES[field("geometry.shape").value];
  for (const size of ["thicknessMm", "diameterMm", "widthMm", "lengthMm", "massG"]) {
    field("geometry." + size).closest(".field").hidden = sizes !== undefined && !sizes.includes(size);
  }
  document.querySelectorAll(".unit").forEach((unit) => {
    unit.textContent = symbol(unit.dataset.unit);
  });
}

/** Shows every amount in the units that are chosen now. */
export function showAmounts() {
  controls().filter((control) => control.tagName === "INPUT").forEach(show);
  fit();
}

function changed() {
  form.dispatchEvent(new Event("change", { bubbles: true }));
}

/** One step after the bath. */
export function addStep(kind, focused = true) {
  const n = steps.children.length;
  const id = (member) => "then." + n + "." + member;
  const fields = STEPS[kind].map(([member, usual]) => stepField(id(member), member, usual));
  const item = el("li", { "data-part": "then." + n },
    el("input", { type: "hidden", name: id("step"), "data-value": JSON.stringify(kind) }),
    el("div", { class: "step" },
      el("strong", {}, say("PICTURE_STEP_" + kind)),
      el("button", {
        type: "button",
        "aria-label": say("TRIAL_REMOVE_STEP", say("PICTURE_STEP_" + kind)),
        onclick: () => {
          item.remove();
          renumber();
          changed();
        },
      }, "×")),
    el("div", { class: "row" }, fields));
  steps.append(item);
  fit();
  if (focused) {
    item.querySelector("input:not([type=hidden]), select").focus();
    changed();
  }
}

function stepField(name, member, usual) {
  const quantity = QUANTITY_OF_STEP[member];
  const unit = quantity !== undefined && quantity !== "time"
    ? [" ", el("span", { class: "unit", "data-unit": quantity })]
    : [];
  const label = el("label", { for: name }, say("TRIAL_STEP_" + member), unit);
  let control;
  if (WORDS[member]) {
    const family = member === "medium" ? "PICTURE_MEDIUM_" : "TRIAL_METHOD_";
    control = el("select", { id: name, name }, WORDS[member].map((w) => el("option", { value: w }, say(family + w))));
  } else if (member === "bothSidesAtOnce") {
    control = el("select", { id: name, name },
      el("option", { value: "" }, say("TRIAL_SIDES_oneAfterOther")),
      el("option", { value: "true" }, say("TRIAL_SIDES_both")));
  } else {
    control = el("input", { id: name, name, inputmode: quantity === "time" ? "text" : "decimal", autocomplete: "off", "data-quantity": quantity });
  }
  if (usual !== "") {
    set(control, usual);
  }
  return el("div", { class: "field" }, label, control);
}

/** After one was taken out, those behind it move up. */
function renumber() {
  [...steps.children].forEach((item, n) => {
    item.dataset.part = "then." + n;
    item.querySelectorAll("[name]").forEach((control) => {
      const name = control.name.replace(/^then\.\d+/, "then." + n);
      item.querySelectorAll("label").forEach((label) => {
        if (label.htmlFor === control.id) {
          label.htmlFor = name;
        }
      });
      control.name = name;
      control.id = name;
    });
  });
}

/** Text as a member: numbers and truths are told by how they look, but for those that are texts. */
function typed(name, text) {
  if (TEXTS.has(name)) {
    return text;
  }
  if (text === "true" || text === "false") {
    return text === "true";
  }
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

/** Members from the text of an address. */
export function parse(text) {
  const flat = {};
  for (const [name, filled] of new URLSearchParams(text)) {
    flat[name] = typed(name, filled);
  }
  return flat;
}

/** Members as the text of an address. */
export function address(flat) {
  return new URLSearchParams(Object.entries(flat).map(([name, filled]) => [name, String(filled)])).toString();
}

/** The request for a plan, or for a process window of the same piece. */
export function request(flat, window = false) {
  const body = {};
  for (const [name, filled] of Object.entries(flat)) {
    if (window ? name.startsWith("then.") : OF_WINDOW.has(name)) {
      continue;
    }
    place(body, name.split("."), filled);
  }
  // Members that a request must have, though nothing stands in them.
  for (const name of ["food", "geometry", "start", "surroundings"]) {
    body[name] ??= {};
  }
  body.surroundings.bath ??= {};
  return body;
}

function place(body, path, filled) {
  let at = body;
  path.slice(0, -1).forEach((step, i) => {
    const own = Object.hasOwn(at, step) ? at[step] : undefined;
    if (typeof own !== "object") {
      at[step] = /^\d+$/.test(path[i + 1]) ? [] : {};
    }
    at = at[step];
  });
  at[path[path.length - 1]] = filled;
}

// ---- faults ----

/** Takes all faults away. */
export function clearFaults() {
  form.querySelectorAll(".fault").forEach((fault) => fault.remove());
  document.querySelectorAll("#window .fault").forEach((fault) => fault.remove());
  controls().forEach((control) => {
    control.removeAttribute("aria-invalid");
    describe(control, undefined);
  });
}

function describe(control, fault) {
  const hint = byId(control.id + "-hint");
  const ids = [fault?.id, hint?.id].filter((id) => id !== undefined);
  if (ids.length > 0) {
    control.setAttribute("aria-describedby", ids.join(" "));
  } else {
    control.removeAttribute("aria-describedby");
  }
}

/** Decodes a pointer in the form of a fragment (RFC 6901, section 6) to the name of a field. */
function nameOf(pointer) {
  let plain = pointer.replace(/^#/, "");
  try {
    plain = decodeURIComponent(plain);
  } catch {
    // Percent signs that mean nothing stand for themselves.
  }
  return plain.split("/").slice(1).map((part) => part.replaceAll("~1", "/").replaceAll("~0", "~")).join(".");
}

/** Shows a fault beside its field, or beside the nearest part that holds it. Returns what can be focused, if anything. */
export function showFault(fault) {
  if (!fault.pointer.startsWith("#")) {
    return undefined;
  }
  const name = nameOf(fault.pointer);
  const text = fault.hint === undefined ? fault.detail : fault.detail + " " + fault.hint;
  const control = field(name);
  if (control && control.type !== "hidden" && !control.closest("[hidden]")) {
    const shownFault = el("p", { class: "fault", id: control.id + "-fault" }, text);
    control.closest(".field, .check").append(shownFault);
    control.setAttribute("aria-invalid", "true");
    describe(control, shownFault);
    for (let folded = control.closest("details"); folded; folded = folded.parentElement.closest("details")) {
      folded.open = true;
    }
    return control;
  }
  for (let part = name; part !== ""; part = part.includes(".") ? part.slice(0, part.lastIndexOf(".")) : "") {
    const holder = [...document.querySelectorAll("[data-part]")].find((element) => element.dataset.part === part);
    if (holder && !holder.closest("[hidden]")) {
      holder.append(el("p", { class: "fault" }, text));
      return holder.querySelector("input:not([type=hidden]), select, button") ?? undefined;
    }
  }
  return undefined;
}

// On the document: some fields belong to the form and stand elsewhere.
document.addEventListener("input", (event) => {
  if (event.target.form === form && event.target.name !== "" && event.target.tagName === "INPUT" && event.target.type !== "checkbox" && event.target.dataset.kind !== "food") {
    note(event.target);
  }
});
