// Timers of the evening's list: one start button a step; hands on first, then the rest of the part runs by itself.
(() => {
  const words = seconds => `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
  const tick = step => {
    const passed = (Date.now() - step.began) / 1000;
    const hands = 60 * Number(step.row.dataset.hands), rest = 60 * Number(step.row.dataset.rest);
    const left = passed < hands ? hands - passed : hands + rest - passed;
    step.shown.textContent = left > 0 ? `${words(left)} ${passed < hands ? "hands on" : "rests"}` : "done";
    if (left <= 0) {
      clearInterval(step.clock);
      step.button.textContent = "Again";
    }
  };
  addEventListener("DOMContentLoaded", () => document.querySelectorAll("[data-hands]").forEach(row => {
    const step = { row, button: row.querySelector("button"), shown: row.querySelector("[role=timer]") };
    step.button.hidden = false;
    step.button.addEventListener("click", () => {
      clearInterval(step.clock);
      step.began = Date.now();
      step.button.textContent = "Start again";
      step.clock = setInterval(() => tick(step), 500);
      tick(step);
    });
  }));
})();
