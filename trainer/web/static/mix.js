// The clock of a batch or a test cup. Without this file the page tells times; with it the page
// counts, starts without signal, and finds a clock again that was left running.
const { holder, scope } = document.currentScript.dataset;
const MINUTE = 60_000, DAY = 1440 * MINUTE, EACH = 250;
const KEPT = "mix-clock";
const one = (mark, inside = document) => inside.querySelector(`[data-${mark}]`);
const all = (mark, inside = document) => [...inside.querySelectorAll(`[data-${mark}]`)];
const show = (shown, ...elements) => elements.forEach((each) => each && (each.hidden = !shown));

const clock = one("clock"), elsewhere = one("elsewhere");

function two(number) {
  return String(number).padStart(2, "0");
}

// "12:05", or "1:02:05" from an hour on.
function figure(milliseconds) {
  const seconds = Math.floor(milliseconds / 1000), hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return `${hours ? `${hours}:${two(minutes)}` : minutes}:${two(seconds % 60)}`;
}

function tellTimes(inside, since) {
  for (const each of all("at", inside)) {
    const at = new Date(since + each.dataset.at * MINUTE);
    each.textContent = `${two(at.getHours())}:${two(at.getMinutes())}`;
  }
}

// This page's address with an instant in it.
function addressed(name, instant) {
  const here = new URL(location.href);
  here.searchParams.set(name, new Date(instant).toISOString());
  return here.pathname + here.search;
}

function asked(name) {
  return new URLSearchParams(location.search).get(name);
}

function fields(name) {
  return document.querySelectorAll(`main input[name=${name}]`);
}

// ---------- What is kept on this phone, for whoever is signed in and nobody else

function kept() {
  try {
    const found = JSON.parse(localStorage.getItem(KEPT));
    if (found?.holder === holder && runs(found.since) && found.path.startsWith(scope)) return found;
    localStorage.removeItem(KEPT);
  } catch { /* A phone that keeps nothing, or something that isn't ours. */ }
  return null;
}

function keep(since) {
  try {
    const path = addressed("since", since);
    localStorage.setItem(KEPT, JSON.stringify({ holder, since, path }));
  } catch { /* The address has it as well. */ }
}

function forget() {
  try { localStorage.removeItem(KEPT); } catch { /* Nothing was kept. */ }
}

function runs(since) {
  return since <= Date.now() + 2 * MINUTE && Date.now() - since < DAY;
}

// ---------- The clock itself

// Working time first, then the soonest gel, then what has passed.
function phaseAt(gone) {
  const [working, short] = ["working", "short"].map((name) => clock.dataset[name] * MINUTE);
  if (!clock.dataset.short) return ["up", gone];
  if (gone < working) return ["working", working - gone];
  return gone < short ? ["gel", short - gone] : ["may", gone];
}

let said = "";

// Read aloud once a minute, and when it is time for something else; not each second.
function say(panel, counted) {
  const minutes = Math.floor(counted / MINUTE);
  const words = `${panel.querySelector(".phase-word").textContent.trim()}. ${minutes} min ${one("label", panel).textContent}.`;
  if (words !== said) one("said", clock).textContent = said = words;
}

function tick(since) {
  const [phase, counted] = phaseAt(Math.max(0, Date.now() - since));
  for (const panel of all("phase", clock)) show(panel.dataset.phase === phase, panel);
  const panel = clock.querySelector(`[data-phase=${phase}]`);
  // A whole second is shown until it is over, so that a countdown ends on nothing.
  one("figure", panel).textContent = figure(counted + (phase === "working" || phase === "gel" ? 999 : 0));
  say(panel, counted);
}

function run(since) {
  show(false, one("start"), one("start-note"), one("still"), elsewhere);
  show(true, clock, one("running"), ...clock.querySelectorAll(".clock-face"));
  for (const field of fields("since")) field.value = new Date(since).toISOString();
  for (const field of fields("gelled")) field.value ||= asked("gelled") ?? "";
  tellTimes(clock, since);
  keep(since);
  tick(since);
  setInterval(tick, EACH, since);
}

function startNow() {
  const since = Date.now();
  history.replaceState(null, "", addressed("since", since));
  run(since);
  clock.scrollIntoView({ block: "nearest" });
}

function showElsewhere(found) {
  show(true, elsewhere);
  one("back", elsewhere).href = found.path;
  tellTimes(elsewhere, found.since);
  const count = () => { one("figure", elsewhere).textContent = figure(Date.now() - found.since); };
  count();
  setInterval(count, EACH);
}

// ---------- What is pressed

one("start")?.addEventListener("submit", (event) => {
  // By the phone's own clock, so that it counts rightly and starts without signal.
  event.preventDefault();
  startNow();
});

// A cup is timed from press to press by this phone's clock alone; the server's may differ.
one("cup")?.addEventListener("submit", (event) => {
  const { since, pressed, minutes } = event.target.elements;
  if (since.value) return;
  pressed.value = new Date().toISOString();
  if (navigator.onLine || minutes.value.trim()) return;
  event.preventDefault();
  startNow();
});

for (const form of all("gelled").concat(all("cup"))) {
  let sent = false;
  form.addEventListener("submit", (event) => {
    const { since, gelled } = form.elements;
    if (event.defaultPrevented || !since.value) return;
    // The first press counts, however often it has to be pressed until it is through.
    gelled.value ||= new Date().toISOString();
    if (!navigator.onLine) {
      history.replaceState(null, "", addressed("gelled", gelled.value));
      show(true, one("no-signal", clock));
    }
    if (sent || !navigator.onLine) return event.preventDefault();
    sent = true;
    setTimeout(() => { sent = false; }, 5000);
    forget();
  });
}

one("done")?.addEventListener("click", forget);
one("forget")?.addEventListener("click", () => {
  forget();
  show(false, elsewhere);
});

// The address has it; a form that came back with something to mend has it in a field.
const since = Date.parse(asked("since") ?? fields("since")[0]?.value);
if (clock && runs(since)) run(since);
else {
  const found = kept();
  if (found) showElsewhere(found);
}

// ---------- Without signal: a worker of this page alone keeps it, for this sign-in alone

if ("serviceWorker" in navigator) {
  const worker = new URL("mix-worker.js", document.currentScript.src);
  navigator.serviceWorker.register(worker, { scope }).catch(() => {});
  navigator.serviceWorker.ready.then((ready) => ready.active?.postMessage(location.href));
}
