// The list of foods that opens while someone writes (combobox pattern of the ARIA Authoring Practices Guide, W3C).

import { byId, el } from "./dom.js";
import { field } from "./form.js";
import { say, word } from "./words.js";

const MOST = 60;

const list = byId("foods");
let foods = [];
let active = -1;

function plain(text) {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();
}

function control() {
  return field("food.id");
}

/** Takes the catalogue, and calls the food that is chosen by its name. */
export function takeFoods(entries) {
  foods = entries
    .map((food) => ({ ...food, searched: plain(food.name + " " + food.id + " " + word("TRIAL_GROUP_", food.group)) }))
    .sort((a, b) => a.name.localeCompare(b.name));
  nameFood();
}

/** The entry of the food that is chosen. */
export function chosenFood() {
  return foods.find((food) => food.id === control().dataset.id);
}

/** Shows the name of the food whose id the field holds. */
export function nameFood() {
  const food = chosenFood();
  if (food) {
    control().value = food.name;
  }
  const form = field("food.form");
  [...form.options].forEach((option) => {
    option.disabled = food !== undefined && option.value !== "" && !food.forms.includes(option.value);
  });
}

function found() {
  const words = plain(control().value).split(/\s+/).filter((part) => part !== "");
  const matching = foods.filter((food) => words.every((part) => food.searched.includes(part)));
  return matching.slice(0, MOST);
}

function open(entries) {
  active = -1;
  list.replaceChildren(
    ...(entries.length === 0
      ? [el("li", { class: "none", role: "option", "aria-disabled": "true", "aria-selected": "false" }, say("TRIAL_NO_FOOD"))]
      : entries.map((food, i) =>
          el("li", {
            role: "option",
            id: "food-" + i,
            "aria-selected": "false",
            "data-id": food.id,
            onpointerdown: (event) => {
              // Before the field loses the focus and the list closes.
              event.preventDefault();
              choose(food);
            },
          }, food.name, el("span", { class: "group" }, word("TRIAL_GROUP_", food.group))))));
  list.hidden = false;
  control().setAttribute("aria-expanded", "true");
}

function close() {
  list.hidden = true;
  active = -1;
  control().setAttribute("aria-expanded", "false");
  control().removeAttribute("aria-activedescendant");
}

function choose(food) {
  control().dataset.id = food.id;
  field("food.form").value = "";
  nameFood();
  close();
  control().form.dispatchEvent(new Event("change", { bubbles: true }));
}

function move(by) {
  const options = [...list.querySelectorAll("[data-id]")];
  if (options.length === 0) {
    return;
  }
  active = (active + by + options.length) % options.length;
  options.forEach((option, i) => option.setAttribute("aria-selected", String(i === active)));
  options[active].scrollIntoView({ block: "nearest" });
  control().setAttribute("aria-activedescendant", options[active].id);
}

export function listenToFoods() {
  const input = control();
  input.addEventListener("input", () => {
    delete input.dataset.id;
    open(found());
  });
  input.addEventListener("focus", () => input.select());
  input.addEventListener("click", () => {
    if (list.hidden) {
      open(input.dataset.id ? foods.slice() : found());
      const at = [...list.children].findIndex((option) => option.dataset.id === input.dataset.id);
      if (at >= 0) {
        active = at - 1;
        move(1);
      }
    }
  });
  input.addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (list.hidden) {
        open(input.dataset.id ? foods.slice() : found());
      }
      move(event.key === "ArrowDown" ? 1 : active < 0 ? 0 : -1);
    } else if (event.key === "Enter" && !list.hidden) {
      event.preventDefault();
      const option = list.querySelectorAll("[data-id]")[Math.max(active, 0)];
      const food = foods.find((entry) => entry.id === option?.dataset.id);
      if (food) {
        choose(food);
      }
    } else if (event.key === "Escape" && !list.hidden) {
      event.preventDefault();
      close();
    }
  });
  input.addEventListener("blur", () => {
    close();
    // A whole name that was written out is a choice; anything else is sent as it stands, and refused by name.
    const named = foods.find((food) => plain(food.name) === plain(input.value) || food.id === input.value.trim());
    if (named && input.dataset.id !== named.id) {
      choose(named);
    }
  });
}
