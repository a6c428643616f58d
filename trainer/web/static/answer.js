// Notes when "check it" was first pressed, so that an answer that gets through later still
// counts for the day it was given. The page works without this.
for (const form of document.querySelectorAll("form[data-answer]")) {
  form.addEventListener("submit", () => {
    const pressed = form.elements.namedItem("pressed");
    if (!pressed.value) pressed.value = new Date().toISOString();
  });
}
