// Moves steps on the page itself, by their buttons or by drag, and says where they went.
// The page works without this: then each button sends the form, and it comes back moved.
for (const field of document.querySelectorAll("[data-order]")) {
  const list = field.querySelector("ol");
  const put = field.querySelector("input[name=answer_0]");
  const told = field.querySelector("[data-told]");

  list.addEventListener("click", (event) => {
    const button = event.target.closest("button[data-by]");
    if (!button) return;
    event.preventDefault();
    const step = button.closest("li");
    const by = Number(button.dataset.by);
    if (by < 0) step.previousElementSibling?.before(step);
    else step.nextElementSibling?.after(step);
    settle(step);
    const other = step.querySelector(`button[data-by="${-by}"]`);
    (button.disabled ? other : button).focus();
  });

  for (const step of list.children) {
    const handle = document.createElement("span");
    handle.className = "step-handle";
    handle.setAttribute("aria-hidden", "true");
    handle.addEventListener("pointerdown", (event) => drag(step, event));
    step.prepend(handle);
  }

  // Listens on the document, since a handle that moves in the page loses hold of the pointer.
  function drag(step, event) {
    event.preventDefault();
    step.classList.add("step-dragged");
    const listening = new AbortController();
    const on = (name, act) => document.addEventListener(name, act, { signal: listening.signal });
    const drop = () => {
      listening.abort();
      step.classList.remove("step-dragged");
      settle(step);
    };
    on("pointermove", ({ clientY }) => {
      const others = [...list.children].filter((each) => each !== step);
      const below = others.find((each) => clientY < middle(each));
      if (below) below.before(step);
      else list.append(step);
    });
    on("pointerup", drop);
    on("pointercancel", drop);
  }

  function middle(step) {
    const { top, height } = step.getBoundingClientRect();
    return top + height / 2;
  }

  function settle(moved) {
    const steps = [...list.children];
    put.value = steps.map((step) => step.dataset.place).join(" ");
    steps.forEach((step, row) => {
      for (const button of step.querySelectorAll("button[data-by]")) {
        const to = row + 1 + Number(button.dataset.by);
        button.value = `${step.dataset.place} to ${to}`;
        button.disabled = to < 1 || to > steps.length;
      }
    });
    const words = moved.querySelector(".step-words").textContent;
    told.textContent = `${steps.indexOf(moved) + 1} of ${steps.length}: ${words}`;
  }
}
