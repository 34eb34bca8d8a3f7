// Questions to the service, as any client asks them.

import { byId } from "./dom.js";
import { language } from "./words.js";
import { units } from "./units.js";

/** A problem of the service, in its own words (RFC 9457). */
export class Refused extends Error {
  constructor(problem, text) {
    super(problem.detail);
    this.problem = problem;
    this.text = text;
  }
}

/** Where a question goes, with the units of its texts. */
export function target(path, parameters = {}) {
  const query = new URLSearchParams(parameters);
  if (units() === "us") {
    query.set("units", "us");
  }
  const text = query.toString().replaceAll("%2C", ",");
  return path + (text === "" ? "" : "?" + text);
}

/** What goes with every question. */
export function headers() {
  const key = byId("key").value.trim();
  return { "Accept-Language": language, ...(key === "" ? {} : { Authorization: "Bearer " + key }) };
}

/** Asks, and returns the answer with its exact text. */
async function ask(address, options) {
  const response = await fetch(address, { ...options, headers: { ...headers(), ...options.headers }, referrerPolicy: "no-referrer" });
  const text = await response.text();
  if (!response.ok) {
    throw new Refused(JSON.parse(text), text);
  }
  return { answer: JSON.parse(text), text };
}

export function get(path) {
  return ask(target(path), { headers: { Accept: "application/json" } });
}

export function post(address, body, signal) {
  return ask(address, {
    method: "POST",
    headers: { "Content-Type": "application/json", Accept: "application/json" },
    body,
    signal,
  });
}

/** The same question for a shell. A key is never written out. */
export function curl(address, body) {
  const quoted = (text) => "'" + text.replaceAll("'", "'\\''") + "'";
  const lines = ["curl -s " + quoted(location.origin + address), "-H 'Content-Type: application/json'"];
  if (language !== "en") {
    lines.push("-H " + quoted("Accept-Language: " + language));
  }
  if (headers().Authorization !== undefined) {
    lines.push('-H "Authorization: Bearer $KEY"');
  }
  lines.push("-d " + quoted(body));
  return lines.join(" \\\n  ");
}
