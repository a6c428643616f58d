// Keeps the Mix page and its files on the phone, so that a clock goes on without signal.
// Whatever the server says comes first. A page is kept under the name of the sign-in that it was
// made for; as soon as another one answers, or none, everything that was kept is dropped.
const FILES = "mix-files", PAGES = "mix-pages-", HOLDER = "Bench-Holder";
const NEEDED = ["face.css", "mix.js", "favicon.svg", "shapes.svg", "fonts/atkinson-next-latin.woff2"];
const MOST = 24, PATIENCE = 5000;

self.addEventListener("install", (event) => {
  const files = NEEDED.map((name) => new URL(name, self.location).href);
  event.waitUntil(caches.open(FILES).then((cache) => cache.addAll(files)).then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

// The page asks for itself to be kept, since the first one came before there was a worker.
self.addEventListener("message", (event) => {
  if (event.data.startsWith(self.registration.scope)) event.waitUntil(fetchPage(event.data).catch(() => {}));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  const page = request.mode === "navigate";
  const answer = page ? fetchPage(request) : fetchFile(request);
  event.waitUntil(answer.catch(() => {}));
  event.respondWith(inTime(answer).catch(async () => (await (page ? keptPage : keptFile)(request.url)) ?? answer));
});

// An answer that is late, or says that something broke, is no better than none.
async function inTime(answer) {
  const late = new Promise((_, fail) => setTimeout(fail, PATIENCE));
  const first = await Promise.race([answer, late]);
  if (first.status >= 500) throw first;
  return first;
}

async function fetchPage(request) {
  const answer = await fetch(request);
  const holder = answer.headers.get(HOLDER);
  if (isShut(answer)) await dropPages("");
  else if (answer.ok && holder) await keepPage(answer.clone(), holder, request.url ?? request);
  return answer;
}

// Nobody is signed in, or somebody who may not.
function isShut(answer) {
  return answer.type === "opaqueredirect" || answer.redirected || [401, 403].includes(answer.status);
}

async function keepPage(answer, holder, url) {
  await dropPages(PAGES + holder);
  const cache = await caches.open(PAGES + holder);
  await cache.delete(tidy(url));
  await cache.put(tidy(url), answer);
  const old = (await cache.keys()).slice(0, -MOST);
  await Promise.all(old.map((each) => cache.delete(each)));
}

async function dropPages(but) {
  const names = (await caches.keys()).filter((name) => name.startsWith(PAGES) && name !== but);
  await Promise.all(names.map((name) => caches.delete(name)));
}

// The page of this address; else the same bucket before its clock was started; else the bare form.
async function keptPage(url) {
  const still = new URL(url);
  for (const name of ["since", "gelled"]) still.searchParams.delete(name);
  for (const each of [url, still.href, still.origin + still.pathname]) {
    const found = await caches.match(tidy(each), { ignoreVary: true });
    if (found) return found;
  }
  return undefined;
}

async function fetchFile(request) {
  const answer = await fetch(request);
  if (answer.ok) await (await caches.open(FILES)).put(request, answer.clone());
  return answer;
}

function keptFile(url) {
  return caches.match(url, { ignoreVary: true });
}

// One address for the same page: what is empty says nothing, and neither does the order.
function tidy(address) {
  const url = new URL(address);
  for (const [name, value] of [...url.searchParams]) if (!value) url.searchParams.delete(name);
  url.searchParams.sort();
  url.hash = "";
  return url.href;
}
