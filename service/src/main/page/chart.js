// Temperatures over time, and a process window, drawn to the width that there is. Lines differ in their dashes and carry
// their names, so that no colour has to be told from another.

import { el, svg } from "./dom.js";
import { growth, say } from "./words.js";
import { amount, number, shown, symbol, time, units } from "./units.js";

/** Steps between marks that a clock face knows [s]. */
const TIME_STEPS = [300, 600, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400, 172800, 345600];

/** Marks of a logarithmic scale of time [s]. */
const MOMENTS = [60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400, 28800, 43200, 86400, 172800, 345600];

const LETTER = 6.4;
const LANE = 30;

function scale(from, to, start, end) {
  return (value) => start + ((Math.min(Math.max(value, from), to) - from) / (to - from)) * (end - start);
}

function marks(from, to, steps, most) {
  const step = steps.find((candidate) => (to - from) / candidate <= most) ?? steps[steps.length - 1];
  const found = [];
  for (let mark = Math.ceil(from / step) * step; mark <= to + 1e-9; mark += step) {
    // Zero has no sign.
    found.push(mark === 0 ? 0 : mark);
  }
  return found;
}

function path(xs, ys) {
  let d = "";
  let pen = false;
  xs.forEach((x, i) => {
    if (ys[i] === undefined) {
      pen = false;
    } else {
      d += (pen ? "L" : "M") + x.toFixed(1) + " " + ys[i].toFixed(1);
      pen = true;
    }
  });
  return d;
}

function area(xs, low, high) {
  const there = path(xs, high);
  const back = path([...xs].reverse(), [...low].reverse()).replace("M", "L");
  return there + back + "Z";
}

function text(kind, x, y, anchor, content) {
  return svg("text", { class: kind, x: x.toFixed(1), y: y.toFixed(1), "text-anchor": anchor }, content);
}

/** Text centred over a place, or moved as far as it must be to stay between two edges. */
function beside(kind, x, y, content, left, right) {
  const half = (LETTER * content.length) / 2;
  return text(kind, Math.min(Math.max(x, left + half), right - half), y, "middle", content);
}

/** Draws again whenever there is more or less room. */
function fitted(draw) {
  const holder = el("div", { class: "chart" });
  let drawn = 0;
  new ResizeObserver(() => {
    const width = Math.floor(holder.clientWidth);
    if (width > 0 && width !== drawn) {
      drawn = width;
      holder.replaceChildren(draw(width));
    }
  }).observe(holder);
  return holder;
}

function hoursMark(seconds) {
  return seconds >= 3600 ? number(seconds / 3600, 1) + " h" : Math.round(seconds / 60) + " min";
}

/** The part of a curve up to a moment. */
function until(curve, moment) {
  const count = Math.max(2, curve.timesS.filter((known) => known <= moment).length);
  return Object.fromEntries(Object.entries(curve).map(([name, values]) => [name, values.slice(0, count)]));
}

/**
 * A plan as a picture with a slider under it that reads the temperatures at a moment.
 *
 * @param plan the answer, with its curve
 * @param title names the picture
 */
export function planChart(plan, title) {
  // Days in a store would leave no room for the hours before.
  const stored = plan.then?.find((step) => step.step === "store")?.begins?.nominalS;
  const curve = stored === undefined ? plan.curve : until(plan.curve, stored);
  const last = Math.max(60, curve.timesS[curve.timesS.length - 1]);
  const coldest = Math.min(0, ...curve.coreLateC, ...(curve.waterC ?? []));
  const hottest = Math.min(105, Math.max(plan.setpointC, ...curve.surfaceC, ...curve.coreEarlyC) + 6);
  const lanes = [
    ["PICTURE_HOT_THROUGH", plan.times.hotThrough, Math.ceil],
    ["PICTURE_SAFE", plan.times.safe, Math.ceil],
    ["PICTURE_TENDER", plan.times.tender, Math.ceil],
    ["PICTURE_GOOD_UNTIL", plan.times.goodUntil, Math.floor],
  ].filter(([, moment]) => moment?.nominalS !== undefined);
  const left = 36;
  const top = 12;
  const plot = 236;
  let cursor;
  let at = plan.takeOut?.bestS ?? last;
  let place = () => 0;

  function draw(width) {
    const right = width - 8;
    const bottom = top + plot;
    const x = scale(0, last, left, right);
    const y = scale(coldest, hottest, bottom, top);
    const xs = curve.timesS.map(x);
    const lanesTop = bottom + 40;
    const height = lanesTop + LANE * (lanes.length + (plan.takeOut ? 1 : 0));
    place = x;
    const parts = [
      svg("rect", { class: "grow", x: left, y: y(growth.to), width: right - left, height: y(growth.from) - y(growth.to) }),
      text("growname", right - 4, y(growth.from) - 5, "end", say("PICTURE_GROWTH")),
    ];
    if (plan.takeOut) {
      const from = x(plan.takeOut.earliestS);
      const to = x(plan.takeOut.latestS ?? last);
      parts.push(
        svg("rect", { class: "open", x: from, y: top, width: Math.max(to - from, 1), height: height - top }),
        svg("line", { class: "best", x1: x(plan.takeOut.bestS), x2: x(plan.takeOut.bestS), y1: top, y2: height }));
    }
    marks(shown(coldest, "C"), shown(hottest, "C"), [10, 20, 50, 100], 8).forEach((mark) => {
      const celsius = units() === "us" ? (mark - 32) / 1.8 : mark;
      parts.push(
        svg("line", { class: "rule", x1: left, x2: right, y1: y(celsius), y2: y(celsius) }),
        text("tick", left - 5, y(celsius) + 4, "end", number(mark, 0) + "°"));
    });
    marks(0, last, TIME_STEPS, Math.max(2, Math.floor((right - left) / 62))).forEach((mark) => {
      const end = x(mark) > right - 22;
      parts.push(
        svg("line", { class: "rule", x1: x(mark), x2: x(mark), y1: top, y2: bottom }),
        text("tick", end ? right : x(mark), bottom + 16, end ? "end" : mark === 0 ? "start" : "middle", mark === 0 ? "0" : hoursMark(mark)));
    });
    const water = curve.waterC ?? curve.timesS.map(() => plan.setpointC);
    const leaves = plan.then?.[0]?.begins?.nominalS ?? Infinity;
    const inBath = (moment, i) => (moment <= leaves || curve.waterC ? y(water[i]) : undefined);
    parts.push(
      svg("path", { class: "water", d: path(xs, curve.timesS.map(inBath)) }),
      svg("path", { class: "band", d: area(xs, curve.coreLateC.map(y), curve.coreEarlyC.map(y)) }),
      svg("path", { class: "outer", d: path(xs, curve.surfaceC.map(y)) }),
      svg("path", { class: "core", d: path(xs, curve.coreC.map(y)) }));
    parts.push(...names(xs, x, y, right));
    (plan.then ?? []).forEach((step) => {
      if (step.begins?.nominalS !== undefined && step.begins.nominalS < last) {
        const begins = x(step.begins.nominalS);
        parts.push(svg("line", { class: "step", x1: begins, x2: begins, y1: top, y2: bottom }));
      }
    });
    lanes.forEach(([name, moment, round], i) => {
      const lane = lanesTop + LANE * i + 14;
      const early = x(moment.earlyS ?? moment.nominalS);
      const late = x(moment.lateS ?? last);
      parts.push(
        svg("line", { class: "rule", x1: left, x2: right, y1: lane, y2: lane }),
        svg("rect", { class: "span", x: early - 3, y: lane - 3, width: Math.max(late - early, 0) + 6, height: 6, rx: 3 }),
        moment.nominalS > last
          ? svg("path", { class: "mark", d: `M${right - 7} ${lane - 5}L${right + 2} ${lane}L${right - 7} ${lane + 5}Z` })
          : svg("circle", { class: "mark", cx: x(moment.nominalS), cy: lane, r: 4.2 }),
        beside("soft", x(moment.nominalS), lane - 8, say(name) + " " + time(moment.nominalS, round), left, right));
    });
    if (plan.takeOut) {
      const lane = lanesTop + LANE * lanes.length + 14;
      const from = x(plan.takeOut.earliestS);
      const to = x(plan.takeOut.latestS ?? last);
      parts.push(
        svg("rect", { class: "good", x: from - 3, y: lane - 4, width: Math.max(to - from, 0) + 6, height: 8, rx: 4 }),
        beside("goodname", x(plan.takeOut.bestS), lane - 9, say("PICTURE_TAKE_OUT"), left, right));
    }
    cursor = svg("line", { class: "cursor", y1: top, y2: bottom, x1: x(at), x2: x(at) });
    parts.push(cursor);
    return svg("svg", { width, height, viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": title }, parts);
  }

  /** Names beside the lines, where these lie apart. */
  function names(xs, x, y, right) {
    const leaves = plan.then?.[0]?.begins?.nominalS ?? last;
    let widest = 0;
    curve.timesS.forEach((moment, i) => {
      if (moment <= leaves * 0.5 && Math.abs(gap(i)) > Math.abs(gap(widest))) {
        widest = i;
      }
    });
    const heating = gap(widest) >= 0;
    const coreX = Math.min(xs[widest] + 8, right - 60);
    return [
      text("corename", coreX, y(curve.coreC[widest]) + (heating ? 14 : -6), "start", say("PICTURE_CORE")),
      text("outername", coreX, y(curve.surfaceC[widest]) + (heating ? 15 : 15), "start", say("PICTURE_SURFACE")),
      beside("tick", Math.min(x(leaves), right), y(plan.setpointC) - 5, say("PICTURE_BATH") + " " + amount(plan.setpointC, "C"), 36, right),
    ];
  }

  function gap(i) {
    return curve.surfaceC[i] - curve.coreC[i];
  }

  /** What the curves hold at a moment, between those that the answer names. */
  function reading(moment) {
    let i = curve.timesS.findIndex((known) => known >= moment);
    i = i < 0 ? curve.timesS.length - 1 : i;
    const before = Math.max(i - 1, 0);
    const span = curve.timesS[i] - curve.timesS[before];
    const part = span > 0 ? (moment - curve.timesS[before]) / span : 1;
    const between = (values) => amount(values[before] + part * (values[i] - values[before]), "C");
    return say("TRIAL_READING", time(moment), between(curve.coreC), between(curve.coreLateC), between(curve.coreEarlyC),
      between(curve.surfaceC));
  }

  const said = el("output", { class: "reading" }, reading(at));
  const slider = el("input", {
    type: "range",
    min: 0,
    max: last,
    step: Math.max(1, Math.round(last / 400)),
    "aria-label": say("TRIAL_MOMENT"),
    "aria-valuetext": reading(at),
    oninput: () => {
      at = Number(slider.value);
      cursor?.setAttribute("x1", place(at));
      cursor?.setAttribute("x2", place(at));
      said.textContent = reading(at);
      slider.setAttribute("aria-valuetext", said.textContent);
    },
  });
  slider.value = at;
  return el("figure", {}, fitted(draw), el("div", { class: "slide" }, slider), said,
    el("figcaption", {}, say("PICTURE_NOTE"), stored === undefined ? "" : " " + say("TRIAL_UNTIL_STORE")));
}

/** A process window: setpoints from left to right, times upwards on a logarithmic scale. */
export function windowChart(answer, availableS, title) {
  const points = answer.setpoints;
  const lines = [
    ["hot", "PICTURE_HOT_THROUGH", (p) => p.hotThrough?.nominalS],
    ["safe", "PICTURE_SAFE", (p) => p.safe?.lateS],
    ["tender", "PICTURE_TENDER", (p) => p.tender?.nominalS],
    ["until", "PICTURE_GOOD_UNTIL", (p) => p.goodUntil?.earlyS],
    ["warm", "PICTURE_WINDOW_WARM_UP", (p) => p.slowWarmUpS],
  ];
  const moments = points.flatMap((p) => [...lines.map(([, , moment]) => moment(p)), p.takeOut?.bestS])
    .filter((moment) => moment !== undefined);
  const soonest = Math.max(60, Math.min(...moments));
  const latest = Math.max(120, ...moments);
  const fromC = points[0].setpointC;
  const toC = points[points.length - 1].setpointC;
  const lone = fromC === toC ? 0.5 : 0;
  const left = 52;
  const top = 10;
  const plot = 280;

  function draw(width) {
    const right = width - 10;
    const bottom = top + plot;
    const x = scale(fromC - lone, toC + lone, left, right);
    const logTime = scale(Math.log(0.8 * soonest), Math.log(1.35 * latest), bottom, top);
    const y = (seconds) => logTime(Math.log(Math.max(seconds, 1)));
    const parts = [];
    MOMENTS.filter((mark) => mark >= 0.8 * soonest && mark <= 1.35 * latest).forEach((mark) => {
      parts.push(
        svg("line", { class: "rule", x1: left, x2: right, y1: y(mark), y2: y(mark) }),
        text("tick", left - 5, y(mark) + 4, "end", hoursMark(mark)));
    });
    const degrees = marks(shown(fromC - lone, "C"), shown(toC + lone, "C"), [0.2, 0.5, 1, 2, 5, 10, 20], Math.max(2, Math.floor((right - left) / 44)));
    degrees.forEach((mark) => {
      const celsius = units() === "us" ? (mark - 32) / 1.8 : mark;
      parts.push(
        svg("line", { class: "rule", x1: x(celsius), x2: x(celsius), y1: top, y2: bottom }),
        text("tick", x(celsius), bottom + 16, "middle", number(mark, 1) + "°"));
    });
    answer.region.forEach((interval) => {
      const inner = points
        .filter((p) => p.takeOut && p.setpointC > interval.fromC && p.setpointC < interval.toC)
        .map((p) => [p.setpointC, p.takeOut]);
      const all = [[interval.fromC, interval.takeOutAtFrom], ...inner, [interval.toC, interval.takeOutAtTo]];
      const end = Math.min(availableS ?? Infinity, 1.35 * latest);
      parts.push(svg("path", {
        class: interval.verdict === "surfaceOnly" ? "partly" : "open",
        d: area(all.map(([c]) => x(c)), all.map(([, t]) => y(t.earliestS)), all.map(([, t]) => y(Math.min(t.latestS ?? end, end)))),
      }));
    });
    if (availableS !== undefined && availableS < 1.35 * latest && availableS > 0.8 * soonest) {
      parts.push(
        svg("line", { class: "limit", x1: left, x2: right, y1: y(availableS), y2: y(availableS) }),
        text("tick", right - 4, y(availableS) - 5, "end", say("PICTURE_WINDOW_AVAILABLE")));
    }
    const drawn = lines
      .map(([kind, name, moment]) => ({ kind, name, ys: points.map((p) => (moment(p) === undefined ? undefined : y(moment(p)))) }))
      .filter(({ ys }) => ys.some((place) => place !== undefined));
    drawn.forEach(({ kind, ys }) => parts.push(svg("path", { class: kind, d: path(points.map((p) => x(p.setpointC)), ys) })));
    const taken = [];
    drawn.forEach((line) => {
      // At the end where the line lies farther from all others.
      const ends = [line.ys.findIndex((place) => place !== undefined), line.ys.findLastIndex((place) => place !== undefined)];
      const alone = (i) => Math.min(...drawn.filter((other) => other !== line && other.ys[i] !== undefined)
        .map((other) => Math.abs(other.ys[i] - line.ys[i])), plot);
      const first = alone(ends[0]) >= alone(ends[1]);
      const end = first ? ends[0] : ends[1];
      let place = Math.max(line.ys[end] - 6, top + 10);
      while (taken.some((other) => other.first === first && Math.abs(other.place - place) < 13)) {
        place -= 13;
      }
      taken.push({ first, place });
      parts.push(text(line.kind + "name name", x(points[end].setpointC) + (first ? 5 : -4), place, first ? "start" : "end", say(line.name)));
    });
    const spare = answer.recommended?.spareTolerances;
    if (spare !== undefined) {
      // How far bath and moment may be off at once.
      const { setpointC, atS } = answer.recommended;
      const [from, to] = [x(setpointC - spare * answer.once.bathK), x(setpointC + spare * answer.once.bathK)];
      const [late, early] = [y(atS + spare * answer.once.momentS), y(atS - spare * answer.once.momentS)];
      parts.push(svg("rect", { class: "slack", x: from, y: late, width: Math.max(to - from, 1), height: Math.max(early - late, 1) }));
    }
    for (const [kind, point] of [["mark", answer.recommended], ["own", answer.own]]) {
      if (point) {
        parts.push(svg("circle", { class: kind, cx: x(point.setpointC), cy: y(point.atS), r: 5 }));
        const said = kind === "own" ? say("PICTURE_WINDOW_OWN") : amount(point.setpointC, "C") + ", " + time(point.atS);
        parts.push(beside("pointname", x(point.setpointC), y(point.atS) + (kind === "own" ? -11 : 20), said, left, right));
      }
    }
    parts.push(text("soft", right, bottom + 32, "end", say("PICTURE_WINDOW_SETPOINT") + " (" + symbol("C") + ")"));
    const height = bottom + 38;
    return svg("svg", { width, height, viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": title }, parts);
  }

  return el("figure", {}, fitted(draw), el("figcaption", {}, say("PICTURE_WINDOW_NOTE")));
}
