// Quantities as people write them. Requests and answers always hold the units of the contract.

import { language, say } from "./words.js";

/** Units of the contract, and those of the United States: exact factors (international yard and pound agreement, 1959). */
const QUANTITIES = {
  C: { metric: "°C", us: "°F", factor: 1.8, offset: 32, decimals: 1 },
  K: { metric: "K", us: "°F", factor: 1.8, offset: 0, decimals: 2 },
  mm: { metric: "mm", us: "in", factor: 1 / 25.4, offset: 0, decimals: 1, usDecimals: 2 },
  m: { metric: "m", us: "ft", factor: 1 / 0.3048, offset: 0, decimals: 0 },
  g: { metric: "g", us: "oz", factor: 1 / 28.349523125, offset: 0, decimals: 0, usDecimals: 1 },
  L: { metric: "L", us: "gal", factor: 1 / 3.785411784, offset: 0, decimals: 2 },
  W: { metric: "W", us: "W", factor: 1, offset: 0, decimals: 0 },
  percent: { metric: "%", us: "%", factor: 1, offset: 0, decimals: 1 },
  s: { metric: "s", us: "s", factor: 1, offset: 0, decimals: 0 },
  days: { metric: "d", us: "d", factor: 1, offset: 0, decimals: 2 },
};

/** Binds a number to its unit. */
const FIXED_SPACE = "\u00a0";

let system = "metric";

export function useUnits(name) {
  system = name === "us" ? "us" : "metric";
}

export function units() {
  return system;
}

export function symbol(quantity) {
  return QUANTITIES[quantity][system];
}

export function number(value, decimals = 2) {
  return new Intl.NumberFormat(language, { maximumFractionDigits: decimals }).format(value);
}

/**
 * A number that must not look better than it is: down for what there is to spare, up for what is missing or asked.
 *
 * @param round Math.floor or Math.ceil
 */
export function cautious(value, decimals, round) {
  const scale = 10 ** decimals;
  // Digits that binary fractions leave are none.
  return number(round(Number((value * scale).toFixed(6))) / scale, decimals);
}

/** The number that is shown for an amount in the unit of the contract. */
export function shown(amount, quantity) {
  const { factor, offset } = QUANTITIES[quantity];
  return system === "us" ? amount * factor + offset : amount;
}

/** An amount with its unit, rounded to the nearest if it is not said which way. */
export function amount(value, quantity, round = undefined) {
  const decimals = (system === "us" ? QUANTITIES[quantity].usDecimals : undefined) ?? QUANTITIES[quantity].decimals;
  const inUnit = shown(value, quantity);
  const rounded = round === undefined ? number(inUnit, decimals) : cautious(inUnit, decimals, round);
  return rounded + FIXED_SPACE + symbol(quantity);
}

function fixed(text) {
  return text.replaceAll(" ", FIXED_SPACE);
}

/** A length of time in whole minutes; up for what is waited for, down for what must not be passed. */
export function time(seconds, round = Math.ceil) {
  const sign = seconds < 0 ? "−" : "";
  const minutes = round(Math.abs(seconds) / 60);
  const hours = Math.floor(minutes / 60);
  if (hours === 0) {
    return fixed(sign + say("WORD_MINUTES", minutes));
  }
  return fixed(sign + (minutes % 60 === 0 ? say("WORD_HOURS", number(hours)) : say("WORD_HOURS_MINUTES", number(hours), minutes % 60)));
}

/**
 * What someone wrote, in the unit of the contract. What is no number stays as it is written: the service says what is
 * wrong with it, in the same words as to any other client.
 */
export function read(text, quantity) {
  const written = text.trim();
  if (quantity === "time") {
    return readTime(written);
  }
  const plain = written.replace(/[\s\u00a0\u202f]/g, "").replace("−", "-").replace(",", ".");
  if (plain === "" || !/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) {
    return written;
  }
  const value = Number(plain);
  if (system === "metric" || quantity === undefined) {
    return value;
  }
  const { factor, offset } = QUANTITIES[quantity];
  // To a ten-thousandth, so that 140 °F are 60 °C and nothing beside it.
  return Math.round(((value - offset) / factor) * 1e4) / 1e4;
}

/** Hours and minutes, or minutes alone [s]. */
function readTime(text) {
  const parts = /^(?:(\d+):)?(\d+)$/.exec(text);
  return parts === null ? text : (Number(parts[1] ?? 0) * 60 + Number(parts[2])) * 60;
}

/** An amount as it stands in a field. */
export function written(value, quantity) {
  if (typeof value !== "number") {
    return String(value);
  }
  if (quantity === "time") {
    const minutes = Math.round(value / 60);
    return Math.floor(minutes / 60) + ":" + String(minutes % 60).padStart(2, "0");
  }
  const shownValue = quantity === undefined ? value : shown(value, quantity);
  // What is converted is shown to a thousandth; the field keeps what it stands for.
  const decimals = system === "us" ? 3 : 4;
  return new Intl.NumberFormat(language, { maximumFractionDigits: decimals, useGrouping: false }).format(shownValue);
}
