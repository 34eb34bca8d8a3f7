// Asks for a plan whenever the question has changed, and shows the answer.

import { byId, el } from "./dom.js";
import { language, say } from "./words.js";
import { amount, cautious, time, useUnits } from "./units.js";
import * as form from "./form.js";
import { chosenFood, listenToFoods, nameFood, takeFoods } from "./foods.js";
import { showPlan, warnings } from "./answer.js";
import { windowChart } from "./chart.js";
import { curl, get, post, Refused, target } from "./service.js";

/** What the page begins with: the pork loin of the invented canteen that all examples are of. */
const FIRST = {
  "food.id": "pork-loin",
  "geometry.shape": "slab",
  "geometry.thicknessMm": 45,
  "start.temperatureC": 4,
  "surroundings.bath.setpointC": 60,
};

/** Parts of a plan that the page shows. */
const INCLUDE = "curve,margins,rules";

/** A pause in writing after which a plan is asked for [ms]. */
const PAUSE = 500;

const rules = new Map();
let asking = new AbortController();
let pause;
let last;

function newQuestion() {
  asking.abort();
  asking = new AbortController();
  return asking.signal;
}

/** The piece in words. */
function piece(flat) {
  const name = chosenFood()?.name ?? flat["food.id"] ?? say("PICTURE_OWN_FOOD");
  const across = flat["geometry.thicknessMm"] ?? flat["geometry.diameterMm"];
  const parts = [name];
  if (typeof across === "number") {
    parts.push(amount(across, "mm"));
  } else if (typeof flat["geometry.massG"] === "number") {
    parts.push(amount(flat["geometry.massG"], "g"));
  }
  if (typeof flat["start.temperatureC"] === "number") {
    parts.push(amount(flat["start.temperatureC"], "C"));
  }
  return parts.join(", ");
}

async function plan(asked = false) {
  clearTimeout(pause);
  const signal = newQuestion();
  const flat = form.answers();
  const units = document.querySelector("[name=units]:checked").value;
  const state = form.address(units === "us" ? { ...flat, units } : flat);
  if (location.hash.slice(1) !== state) {
    history.replaceState(null, "", "#" + state);
  }
  byId("answer").setAttribute("aria-busy", "true");
  const address = target("/v1/cook-plans", { include: INCLUDE });
  const body = JSON.stringify(form.request(flat));
  try {
    const { answer, text } = await post(address, body, signal);
    form.clearFaults();
    byId("refusal").replaceChildren();
    byId("plan").replaceChildren(...showPlan(answer, piece(flat), rules));
    exchange(address, flat, text);
    byId("window").hidden = false;
    await processWindow(flat, signal);
  } catch (failure) {
    refused(failure, address, flat, asked);
  } finally {
    if (!signal.aborted) {
      byId("answer").setAttribute("aria-busy", "false");
    }
  }
}

/** The exact request and answer. The body is laid out for reading; nothing else differs. */
function exchange(address, flat, text) {
  const body = JSON.stringify(form.request(flat), null, 2);
  last = { address, body, text };
  byId("request-text").textContent = "POST " + address + "\nContent-Type: application/json\nAccept-Language: " + language + "\n\n" + body;
  byId("answer-text").textContent = text;
  byId("exchange").hidden = false;
}

async function processWindow(flat, signal) {
  const place = byId("window-answer");
  const address = target("/v1/process-windows");
  try {
    const { answer } = await post(address, JSON.stringify(form.request(flat, true)), signal);
    const title = say("PICTURE_WINDOW_TITLE", piece(flat));
    const reasons = new Map(answer.reasons.map((reason) => [reason.code, reason.text]));
    const point = answer.recommended;
    const found = point
      ? say("PICTURE_WINDOW_POINT", amount(point.setpointC, "C"), time(point.atS), tolerances(point), say("TRIAL_VERDICT_" + point.verdict))
      : say("PICTURE_WINDOW_CLOSED", reasons.get(answer.closed?.barredBy) ?? "");
    const notes = answer.region.flatMap((interval) => [
      interval.belowBarredBy ? say("PICTURE_WINDOW_BELOW", amount(interval.fromC, "C"), reasons.get(interval.belowBarredBy) ?? "") : "",
      interval.aboveBarredBy ? say("PICTURE_WINDOW_ABOVE", amount(interval.toC, "C"), reasons.get(interval.aboveBarredBy) ?? "") : "",
    ]).filter((note) => note !== "");
    const openings = (answer.closed?.openings ?? []).map((opening) => opening.text);
    place.replaceChildren(
      el("p", { class: "found" }, found),
      windowChart(answer, flat.availableS, title),
      el("ul", {}, [...notes, ...openings.map((opening) => say("PICTURE_WINDOW_OPENS", opening))].map((note) => el("li", {}, note))),
      warnings(answer.warnings) ?? "");
  } catch (failure) {
    if (failure instanceof Refused) {
      place.replaceChildren(problem(failure.problem, failure.problem.errors.map((fault) => [fault, form.showFault(fault)])));
    } else if (failure.name !== "AbortError") {
      place.replaceChildren(el("p", { class: "wrong" }, say("TRIAL_UNREACHABLE")));
    }
  }
}

/** How many times all tolerances may go wrong together, rounded down. */
function tolerances(point) {
  return cautious(point.spareTolerances ?? 0, 1, Math.floor);
}

/** A problem in the words of the service, with a way to each field. */
function problem(said, faults) {
  return el("div", { class: "problem" },
    el("p", {}, el("strong", {}, said.title), " ", said.errors.length === 0 ? said.detail : ""),
    faults.length === 0 ? "" : el("ul", {}, faults.map(([fault, control]) =>
      el("li", {},
        control
          ? el("a", { href: "#" + control.id, onclick: (event) => { event.preventDefault(); control.focus(); } }, fault.detail)
          : fault.detail,
        fault.hint ? " " + fault.hint : ""))),
    (said.alternatives ?? []).length === 0 ? "" : el("div", { class: "presets" },
      said.alternatives.map((other) =>
        el("button", {
          type: "button",
          onclick: () => {
            form.fillIn({ ...form.answers(), "surroundings.bath.setpointC": other.setpointC });
            nameFood();
            plan();
          },
        }, say("TRIAL_TRY_SETPOINT", amount(other.setpointC, "C"))))),
    el("p", {}, el("a", { href: said.type }, say("TRIAL_PROBLEM_MEANS"))));
}

function refused(failure, address, flat, asked) {
  if (failure.name === "AbortError") {
    return;
  }
  form.clearFaults();
  byId("plan").replaceChildren();
  byId("window").hidden = true;
  if (!(failure instanceof Refused)) {
    byId("refusal").replaceChildren(el("div", { class: "problem" },
      el("p", {}, say("TRIAL_UNREACHABLE")),
      el("button", { type: "button", onclick: () => plan(true) }, say("TRIAL_AGAIN"))));
    if (!(failure instanceof TypeError)) {
      throw failure;
    }
    return;
  }
  exchange(address, flat, failure.text);
  const faults = failure.problem.errors.map((fault) => [fault, form.showFault(fault)]);
  byId("refusal").replaceChildren(problem(failure.problem, faults));
  if (failure.problem.status === 401 || failure.problem.status === 403) {
    byId("access").open = true;
  }
  if (asked) {
    const first = faults.map(([, control]) => control).find((control) => control !== undefined);
    (first ?? byId("answer")).focus();
  }
}

function fromAddress() {
  const { units, ...flat } = form.parse(location.hash.slice(1));
  useUnits(units);
  byId(units === "us" ? "units-us" : "units-metric").checked = true;
  form.fillIn(Object.keys(flat).length === 0 ? FIRST : flat);
  nameFood();
}

async function copy(text, told) {
  try {
    await navigator.clipboard.writeText(text);
    byId(told).textContent = say("TRIAL_COPIED");
  } catch {
    // Pages that came without TLS may not write there: then it is shown, to be copied by hand.
    byId(told).replaceChildren(el("textarea", { readonly: true, rows: 4, "aria-label": say("TRIAL_COPY_BY_HAND") }, text));
    byId(told).firstChild.select();
  }
}

/** Catalogues are asked for again when a key has been given; the page works without them. */
async function catalogues() {
  const [foods, published] = await Promise.all([get("/v1/foods"), get("/v1/rules")]);
  takeFoods(foods.answer.foods);
  const list = form.field("rule");
  const chosen = list.value;
  list.replaceChildren(list.options[0]);
  published.answer.rules.filter((rule) => rule.kind === "cooking").forEach((rule) => {
    rules.set(rule.id, rule);
    list.append(el("option", { value: rule.id }, (rule.jurisdiction ? rule.jurisdiction + ": " : "") + rule.name));
  });
  if (chosen !== "" && ![...list.options].some((option) => option.value === chosen)) {
    list.append(el("option", { value: chosen }, chosen));
  }
  list.value = chosen;
}

async function begin() {
  try {
    await catalogues();
  } catch (failure) {
    if (!(failure instanceof Refused)) {
      console.warn(failure);
    }
  }
  await plan();
}

function listen() {
  const element = byId("form");
  element.addEventListener("submit", (event) => {
    event.preventDefault();
    plan(true);
    if (matchMedia("(max-width: 899px)").matches) {
      byId("answer").scrollIntoView();
    }
  });
  document.addEventListener("input", (event) => {
    if (event.target.form === element && event.target.name !== "" && event.target.dataset.kind !== "food") {
      clearTimeout(pause);
      pause = setTimeout(plan, PAUSE);
    }
  });
  document.addEventListener("change", (event) => {
    if (event.target !== element && event.target.form !== element) {
      return;
    }
    form.fit();
    if (event.target.tagName === "INPUT" && event.target.dataset.quantity !== undefined && event.target.dataset.value !== undefined) {
      form.showAmounts();
    }
    clearTimeout(pause);
    pause = setTimeout(plan, 0);
  });
  byId("units").addEventListener("change", (event) => {
    useUnits(event.target.value);
    form.showAmounts();
    plan();
  });
  document.querySelectorAll("[data-start]").forEach((button) => button.addEventListener("click", () => {
    form.fillIn({ ...form.answers(), "start.temperatureC": Number(button.dataset.start) });
    nameFood();
    plan();
  }));
  document.querySelectorAll("button[data-step]").forEach((button) => button.addEventListener("click", () => form.addStep(button.dataset.step)));
  document.querySelectorAll(".languages a").forEach((link) => link.addEventListener("click", () => {
    link.hash = location.hash;
  }));
  byId("skip").addEventListener("click", (event) => {
    // The fragment of the address holds the question.
    event.preventDefault();
    byId("answer").focus();
  });
  byId("key").addEventListener("change", begin);
  byId("share").addEventListener("click", () => copy(location.href, "shared"));
  byId("copy-curl").addEventListener("click", () => copy(curl(last.address, last.body), "copied"));
  byId("copy-request").addEventListener("click", () => copy(last.body, "copied"));
  byId("copy-answer").addEventListener("click", () => copy(last.text, "copied"));
  window.addEventListener("hashchange", () => {
    fromAddress();
    plan();
  });
  listenToFoods();
}

fromAddress();
listen();
begin();
