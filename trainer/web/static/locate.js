// A tap on a place in the picture picks it in the list, without loading the page again, and is
// told to whoever doesn't see it.
for (const figure of document.querySelectorAll("[data-locate]")) {
  const form = figure.closest("form");
  const told = figure.querySelector("[data-told]");
  const radios = [...form.elements].filter((each) => each.name === "answer_0");

  figure.addEventListener("click", (event) => {
    const link = event.target.closest("[data-picks]");
    if (!link) return;
    event.preventDefault();
    const radio = radios.find((each) => each.value === link.dataset.picks);
    radio.checked = true;
    show();
    told.textContent = `Picked: ${link.getAttribute("aria-label")}`;
  });
  form.addEventListener("change", show);
  show();

  function show() {
    const picked = radios.find((each) => each.checked)?.value;
    for (const link of figure.querySelectorAll("[data-picks]")) {
      link.firstElementChild.classList.toggle("region-picked", link.dataset.picks === picked);
    }
  }
}
