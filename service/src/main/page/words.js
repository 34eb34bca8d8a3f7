// The sentences of the page's language, and what else the service knows beforehand.

const data = JSON.parse(document.getElementById("words").textContent);

/** BCP 47. */
export const language = data.language;

/** Where bacteria grow [C]. */
export const growth = data.growthC;

/** A sentence with its values. A key that is missing is a fault of ours, and must not pass unseen. */
export function say(key, ...values) {
  const sentence = data.sentences[key];
  if (sentence === undefined) {
    throw new Error("no sentence " + key);
  }
  return sentence.replace(/\{(\d)\}/g, (place, n) => values[n]);
}

/** What a word of an answer means. More words may come: one that is not known here stands for itself. */
export function word(family, name) {
  return data.sentences[family + name] ?? name;
}

/** The name of an organism by its word in an answer. */
export function organism(name) {
  return data.organisms[name] ?? name;
}
