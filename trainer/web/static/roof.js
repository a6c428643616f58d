// Brings the plan up to date while a roof is being described, and its rows with it.
// The page works without this: then "Plan it" does the same.
const PAUSE = 400;
const form = document.querySelector("form[data-roof]");
const told = form.querySelector("[data-told]");
let waiting;
let asked;

form.addEventListener("input", () => {
  clearTimeout(waiting);
  asked?.abort();
  waiting = setTimeout(bringUpToDate, PAUSE);
});

async function bringUpToDate() {
  const asking = (asked = new AbortController());
  const sent = new URLSearchParams(new FormData(form));
  sent.set("press", "sheet");
  try {
    const answer = await fetch(form.action, { method: "POST", body: sent, signal: asking.signal });
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (!asking.signal.aborted) put(page);
  } catch (error) {
    if (error.name !== "AbortError") say("No signal. The plan follows when there is some.");
  }
}

function put(page) {
  const focused = document.activeElement.id;
  for (const row of page.querySelectorAll("[data-key]")) {
    const old = document.getElementById(row.id);
    if (old.dataset.key !== row.dataset.key) old.replaceWith(row);
  }
  for (const words of page.querySelectorAll("[data-live]")) {
    document.getElementById(words.id).textContent = words.textContent;
  }
  const plan = page.getElementById("plan");
  const old = document.getElementById("plan");
  for (const open of old.querySelectorAll("details[open][id]")) {
    plan.querySelector(`[id="${open.id}"]`)?.setAttribute("open", "");
  }
  old.replaceWith(plan);
  forgetMended(plan);
  useDigits();
  if (document.activeElement.id !== focused) document.getElementById(focused)?.focus();
  say(plan.dataset.said);
}

// A sentence goes once its field is mended; what is left is listed where the plan will be.
function forgetMended(plan) {
  document.querySelector(".form-errors")?.remove();
  const wrong = new Set([...plan.querySelectorAll(".waiting a")].map((each) => each.hash.slice(1)));
  for (const error of form.querySelectorAll(".error")) {
    const name = error.id.replace(/-error$/, "");
    if (wrong.has(name)) continue;
    error.remove();
    document.getElementById(name)?.removeAttribute("aria-invalid");
  }
}

// Emptied first, or the same words would not be read out a second time.
function say(words) {
  told.replaceChildren();
  const link = Object.assign(document.createElement("a"), { href: "#plan", textContent: "Look at it" });
  setTimeout(() => told.replaceChildren(`${words} `, link), 50);
}

// Digits are quicker to type with large keys; feet, inches and ounces need the letters.
function useDigits() {
  for (const field of form.querySelectorAll("[data-digits]")) field.inputMode = "decimal";
}
useDigits();
