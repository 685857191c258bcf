// Draws every figure.plot from the JSON beside it: puts the colours of the style sheet in, then hands it to the drawing library.
(function () {
  "use strict";
  var printing = false;
  var PRINT_PX = 690; // width of the text on an A4 sheet
  function filled(value, style) {
    if (typeof value === "string") {
      var token = /^(var|band)\((--[a-z0-9-]+)\)$/.exec(value);
      if (!token) { return value; }
      var colour = style.getPropertyValue(token[2]).trim();
      if (token[1] === "var") { return colour; }
      var part = function (at) { return parseInt(colour.slice(at, at + 2), 16); };
      return "rgba(" + [part(1), part(3), part(5), style.getPropertyValue("--band").trim()].join(",") + ")";
    }
    if (Array.isArray(value)) { return value.map(function (one) { return filled(one, style); }); }
    if (value && typeof value === "object") {
      var copy = {};
      Object.keys(value).forEach(function (key) { copy[key] = filled(value[key], style); });
      return copy;
    }
    return value;
  }
  function places() { return Array.prototype.slice.call(document.querySelectorAll("figure.plot")); }
  function width(figure) { return figure.classList.contains("half") ? PRINT_PX / 2 - 12 : PRINT_PX; }
  function draw(figure) {
    var said = filled(JSON.parse(figure.querySelector("script").textContent), getComputedStyle(document.documentElement));
    if (window.matchMedia("(pointer: coarse)").matches) { said.layout.dragmode = false; } // a finger scrolls the page
    if (printing) { said.layout.width = width(figure); said.layout.height *= 0.8; said.layout.autosize = false; }
    window.Plotly.react(figure.querySelector(".draw"), said.data, said.layout, said.config);
    figure.drawn = true;
  }
  function drawn() { return places().filter(function (figure) { return figure.drawn; }); }
  window.addEventListener("beforeprint", function () { printing = true; places().forEach(draw); });
  window.addEventListener("afterprint", function () { printing = false; drawn().forEach(draw); });
  document.addEventListener("heatwright:look", function () { drawn().forEach(draw); }); // light or dark was chosen
  (function next(waiting) { // one after the other, so that the page can be read and scrolled meanwhile
    if (waiting.length === 0) { return; }
    if (!waiting[0].drawn) { draw(waiting[0]); }
    setTimeout(function () { next(waiting.slice(1)); }, 0);
  })(places());
})();
