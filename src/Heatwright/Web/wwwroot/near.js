// The desk's page about near devices: shows at once that one was paired, and how long the digits are good.
(() => {
  const near = document.getElementById("near"), left = document.querySelector("[data-left]"), began = Date.now();
  addEventListener("bench-changed", event => event.preventDefault()); // this page shows nothing of the study
  setInterval(async () => {
    if (left) {
      const rest = Math.max(0, Math.ceil(Number(left.dataset.left) - (Date.now() - began) / 1000));
      left.textContent = `Good for another ${Math.floor(rest / 60)}:${String(rest % 60).padStart(2, "0")}.`;
    }

    try {
      const now = await (await fetch("/near/state")).json();
      if (now.state !== near.dataset.state) {
        location.reload();
      }
    } catch { /* the bench is away; it is asked again */ }
  }, 1000);
})();
