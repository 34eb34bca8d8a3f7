// A plan for people: as sentences, as figures, and as a picture.

import { el } from "./dom.js";
import { organism, say, word } from "./words.js";
import { amount, cautious, number, time } from "./units.js";
import { planChart } from "./chart.js";

const SEVERITIES = ["danger", "caution", "info"];

const signed = (value) => (value >= 0 ? "+" + cautious(value, 1, Math.floor) : "−" + cautious(-value, 1, Math.ceil));

/** The sentences that a cook would follow. */
function sentences(plan, piece, rules) {
  const lines = [say("TRIAL_SAY_IN", piece, amount(plan.setpointC, "C"))];
  const takeOut = plan.takeOut;
  if (!takeOut) {
    lines.push(plan.noTakeOutReason?.text ?? say("TRIAL_SAY_NO_TIME"));
  } else if (takeOut.latestS === undefined) {
    lines.push(say("TRIAL_SAY_OUT_OPEN", time(takeOut.bestS), time(takeOut.earliestS)));
  } else {
    lines.push(say("TRIAL_SAY_OUT", time(takeOut.bestS), time(takeOut.earliestS), time(takeOut.latestS, Math.floor)));
  }
  const rule = rules.get(plan.safety.rule)?.name ?? plan.safety.rule;
  lines.push(say(VERDICTS.has(plan.safety.verdict) ? "TRIAL_SAY_" + plan.safety.verdict : "TRIAL_SAY_notMet", rule));
  return lines;
}

/** Verdicts that are known; any other is treated as one that is not met, as the contract asks. */
const VERDICTS = new Set(["met", "notMet", "surfaceOnly", "notApplicable"]);

/** From when to when the piece may leave the bath, on a line from food in. */
function openTime(takeOut) {
  const end = takeOut.latestS ?? takeOut.bestS * 1.6;
  const last = Math.max(end * 1.08, 1);
  const share = (seconds) => ((100 * seconds) / last).toFixed(2) + "%";
  const range = el("div", { class: "openrange" });
  range.style.left = share(takeOut.earliestS);
  range.style.right = takeOut.latestS === undefined ? "0" : share(last - takeOut.latestS);
  const best = el("div", { class: "openbest" });
  best.style.left = share(takeOut.bestS);
  return el("div", { class: "opentime" },
    el("div", { class: "openline", "aria-hidden": "true" }, range, best),
    el("dl", {},
      pair("TRIAL_EARLIEST", time(takeOut.earliestS)),
      pair("TRIAL_BEST", time(takeOut.bestS), "strong"),
      pair("TRIAL_LATEST", takeOut.latestS === undefined ? say("TRIAL_OPEN_END") : time(takeOut.latestS, Math.floor))));
}

function pair(key, text, kind = "") {
  return el("div", { class: kind }, el("dt", {}, say(key)), el("dd", {}, text));
}

/** Rows of what there is; what is absent has none. */
function table(rows) {
  return el("table", { class: "figures" },
    el("tbody", {},
      rows.filter(([, text]) => text !== undefined).map(([key, text, note]) =>
        el("tr", {}, el("th", { scope: "row" }, say(key)), el("td", {}, text, note ? el("small", {}, note) : "")))));
}

const present = (value, show) => (value === undefined ? undefined : show(value));

/** A margin as a row: what there is to spare, or what is missing, never rounded in its favour. */
function spare(kind, margin, show) {
  return margin === undefined || margin >= 0
    ? ["TRIAL_MARGIN_" + kind, present(margin, (m) => show(m, Math.floor))]
    : ["TRIAL_MISSING_" + kind, show(-margin, Math.ceil)];
}

function safety(plan, rules) {
  const s = plan.safety;
  const known = VERDICTS.has(s.verdict) ? s.verdict : "notMet";
  const margins = plan.margins;
  return el("section", { class: "card " + known, "aria-labelledby": "safety-heading" },
    el("h3", { id: "safety-heading" }, say("TRIAL_SAFETY")),
    el("p", { class: "verdict" }, say("TRIAL_VERDICT_" + known)),
    table([
      ["TRIAL_RULE", rules.get(s.rule)?.name ?? s.rule, s.rule],
      ["TRIAL_ORGANISM", present(s.organism, organism)],
      ["TRIAL_KILL", present(s.achievedLog10, (a) => say("TRIAL_KILL_IS", cautious(a, 1, Math.floor), cautious(s.requiredLog10, 1, Math.ceil)))],
      ["TRIAL_MARGIN_LOG", present(s.marginLog10, (m) => signed(m) + " log"), present(s.band, (b) => word("TRIAL_BAND_", b))],
      spare("TIME", s.marginS, (m, round) => time(m, round)),
      spare("BATH", s.marginK, (m, round) => amount(m, "K", round)),
      spare("SIZE", s.marginMm, (m, round) => amount(m, "mm", round)),
      spare("TABLE", s.tableMarginS, (m, round) => time(m, round)),
      ["TRIAL_WARM_UP", present(s.warmUpS, (w) => time(w)), present(s.warmUpLeftS, (l) => say("TRIAL_LEFT", time(l, Math.floor)))],
      ["TRIAL_GROWTH", present(s.growthLog10, (g) => cautious(g, 2, Math.ceil) + " log")],
      ["TRIAL_MISSED", present(margins?.missProbability, (p) => cautious(100 * p, 2, Math.ceil) + " %")],
    ]));
}

function texture(plan) {
  const t = plan.texture;
  return el("section", { class: "card texture-" + t.verdict, "aria-labelledby": "texture-heading" },
    el("h3", { id: "texture-heading" }, say("TRIAL_TEXTURE")),
    el("p", { class: "verdict" }, word("TRIAL_TEXTURE_IS_", t.verdict)),
    table([
      ["TRIAL_TEXTURE_WINDOW", present(t.windowS, (w) => span(w.opensS, w.closesS))],
      ["TRIAL_TEXTURE_LIMIT", present(t.limit, (l) => word("TRIAL_LIMIT_", l))],
      ["TRIAL_MOISTURE", present(t.moistureLossPercent, (m) => number(m, 1) + " %")],
      ["TRIAL_CONFIDENCE", present(t.confidence, (c) => word("TRIAL_CONFIDENCE_", c))],
      ["TRIAL_SOFT_FROM", present(plan.times.softFrom?.nominalS, (s) => time(s, Math.floor))],
    ]));
}

function span(from, to) {
  if (from === undefined) {
    return to === undefined ? undefined : say("TRIAL_UNTIL", time(to, Math.floor));
  }
  return to === undefined ? say("TRIAL_FROM", time(from)) : say("TRIAL_FROM_TO", time(from), time(to, Math.floor));
}

/** Milestones in the worst, the given and the best case. */
function milestones(plan) {
  const rows = [
    ["PICTURE_HOT_THROUGH", plan.times.hotThrough, Math.ceil],
    ["PICTURE_SAFE", plan.times.safe, Math.ceil],
    ["PICTURE_TENDER", plan.times.tender, Math.ceil],
    ["PICTURE_GOOD_UNTIL", plan.times.goodUntil, Math.floor],
  ].filter(([, moment]) => moment !== undefined);
  return el("div", { class: "wide", tabindex: "0", role: "group", "aria-label": say("TRIAL_MILESTONES") },
    el("table", { class: "milestones" },
      el("caption", {}, say("TRIAL_MILESTONES")),
      el("thead", {}, el("tr", {}, el("td"), ["TRIAL_EARLY", "TRIAL_NOMINAL", "TRIAL_LATE"].map((key) => el("th", { scope: "col" }, say(key))))),
      el("tbody", {}, rows.map(([key, moment, round]) =>
        el("tr", {}, el("th", { scope: "row" }, say(key)), [moment.earlyS, moment.nominalS, moment.lateS].map((seconds) =>
          el("td", {}, seconds === undefined ? "–" : time(seconds, round))))))));
}

/** What becomes of the piece after the bath. */
function following(plan) {
  if (!plan.then?.length) {
    return undefined;
  }
  return el("section", { "aria-labelledby": "then-heading" },
    el("h3", { id: "then-heading" }, say("TRIAL_PART_THEN")),
    el("ol", { class: "then" }, plan.then.map((step) =>
      el("li", {},
        el("strong", {}, word("PICTURE_STEP_", step.step)),
        " ", step.ends?.nominalS === undefined ? "" : say("TRIAL_UNTIL", time(step.ends.nominalS)),
        el("br"),
        say("TRIAL_CORE_THEN", amount(step.coreC, "C"), amount(step.coreLowC, "C"), amount(step.coreHighC, "C")),
        outcome(step).map((line) => [el("br"), line])))));
}

function outcome(step) {
  const lines = [];
  if (step.sear) {
    lines.push(say("TRIAL_SEAR_IS", amount(step.sear.riseK, "K"), amount(step.sear.peakC, "C"), amount(step.sear.depthMm, "mm")));
  }
  if (step.cooling) {
    lines.push(mark(step.cooling.kept, say(step.cooling.kept ? "PICTURE_COOLING_KEPT" : "PICTURE_COOLING_NOT_KEPT", step.cooling.rule)));
  }
  if (step.keeping) {
    const k = step.keeping;
    const asked = number(k.askedDays, 1);
    lines.push(mark(k.kept, k.longestDays === undefined
      ? say("TRIAL_KEEPS_OPEN", asked)
      : say(k.kept ? "TRIAL_KEEPS" : "TRIAL_KEEPS_NOT", asked, number(k.longestDays, 1))));
  }
  if (step.reheating?.hotThroughAfter?.nominalS !== undefined) {
    const after = step.reheating.hotThroughAfter;
    lines.push(say("TRIAL_REHEATED", time(after.nominalS), after.lateS === undefined ? "–" : time(after.lateS)));
  }
  if (step.interruption) {
    const fine = step.interruption.verdict === "mayGoOn";
    lines.push(mark(fine, say(fine ? "TRIAL_MAY_GO_ON" : "TRIAL_DISCARD_OR_DECIDE")));
  }
  if (step.holding) {
    const fine = step.holding.verdict === "met" || step.holding.verdict === "notApplicable";
    lines.push(mark(fine, say("PICTURE_VERDICT_" + (VERDICTS.has(step.holding.verdict) ? step.holding.verdict : "notMet"), "")));
  }
  return lines;
}

function mark(fine, text) {
  return el("span", { class: fine ? "fine" : "wrong" }, (fine ? "✓ " : "✗ ") + text.trim());
}

/** How the other published rules judge the same cook. */
function otherRules(plan, rules) {
  if (!plan.otherRules?.length) {
    return undefined;
  }
  return el("details", {},
    el("summary", {}, say("TRIAL_OTHER_RULES")),
    el("div", { class: "wide", tabindex: "0", role: "group", "aria-label": say("TRIAL_OTHER_RULES") },
      el("table", { class: "milestones" },
        el("thead", {}, el("tr", {}, ["TRIAL_RULE", "TRIAL_VERDICT", "TRIAL_SAFE_FROM"].map((key) => el("th", { scope: "col" }, say(key))))),
        el("tbody", {}, plan.otherRules.map((other) => {
          const known = VERDICTS.has(other.verdict) ? other.verdict : "notMet";
          return el("tr", {},
            el("th", { scope: "row" }, rules.get(other.rule)?.name ?? other.rule),
            el("td", {}, say("TRIAL_VERDICT_" + known)),
            el("td", {}, other.safeLateS === undefined ? "–" : time(other.safeLateS)));
        })))));
}

/** Warnings, the gravest first, each with its severity in words. */
export function warnings(all) {
  const grave = (warning) => (SEVERITIES.includes(warning.severity) ? SEVERITIES.indexOf(warning.severity) : 0);
  const sorted = [...all].sort((a, b) => grave(a) - grave(b));
  if (sorted.length === 0) {
    return undefined;
  }
  return el("ul", { class: "warnings" }, sorted.map((warning) =>
    el("li", { class: SEVERITIES[grave(warning)] },
      el("strong", {}, say("TRIAL_SEVERITY_" + SEVERITIES[grave(warning)])), " ", warning.text, " ",
      el("code", {}, warning.code))));
}

/** A plan, whole. */
export function showPlan(plan, piece, rules) {
  const [put, out, safe] = sentences(plan, piece, rules);
  return [
    el("div", { class: "said", role: "status" },
      el("p", {}, put),
      el("p", { class: "out" }, out),
      el("p", {}, safe),
      plan.setpointReason ? el("p", { class: "hint" }, plan.setpointReason) : ""),
    plan.takeOut ? openTime(plan.takeOut) : "",
    warnings(plan.warnings) ?? "",
    plan.curve ? planChart(plan, say("PICTURE_TITLE", piece, amount(plan.setpointC, "C"))) : "",
    plan.bath ? el("p", {}, plan.bath.backAtS === undefined
      ? say("TRIAL_WATER_FALLS", amount(plan.bath.lowestC, "C"), time(plan.bath.lowestAtS))
      : say("TRIAL_WATER_FALLS_BACK", amount(plan.bath.lowestC, "C"), time(plan.bath.lowestAtS), time(plan.bath.backAtS))) : "",
    plan.atServe ? el("p", {}, say("TRIAL_AT_SERVE", time(plan.atServe.atS), amount(plan.atServe.coreC, "C"),
      amount(plan.atServe.coreLateC, "C"), amount(plan.atServe.coreEarlyC, "C"))) : "",
    following(plan) ?? "",
    el("div", { class: "cards" }, safety(plan, rules), texture(plan)),
    milestones(plan),
    otherRules(plan, rules) ?? "",
    el("ul", { class: "cautions" }, plan.cautions.map((caution) => el("li", {}, caution.text))),
    el("p", { class: "hint" }, say("TRIAL_MADE_BY", plan.parameterSet, plan.digest), " ",
      el("a", { href: "/docs/guide/numbers" }, say("TRIAL_NUMBERS")), " · ",
      el("a", { href: "/docs/guide/trust" }, say("TRIAL_TRUST")), " · ",
      el("a", { href: "/docs/guide/sources" }, say("TRIAL_SOURCES"))),
  ].filter((part) => part !== "");
}
