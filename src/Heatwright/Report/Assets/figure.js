// Draws every figure.plot from the JSON beside it: puts the colours of the style sheet in, then hands it to the drawing library.
(function () {
  "use strict";
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
  function draw() {
    var style = getComputedStyle(document.documentElement);
    places().forEach(function (figure) {
      var said = filled(JSON.parse(figure.querySelector("script").textContent), style);
      if (window.matchMedia("(pointer: coarse)").matches) { said.layout.dragmode = false; } // a finger scrolls the page
      window.Plotly.react(figure.querySelector(".draw"), said.data, said.layout, said.config);
    });
  }
  function each(change) { places().forEach(function (figure) { window.Plotly.relayout(figure.querySelector(".draw"), change); }); }
  window.addEventListener("beforeprint", function () { each({ width: PRINT_PX, autosize: false }); });
  window.addEventListener("afterprint", function () { each({ width: null, autosize: true }); });
  document.addEventListener("heatwright:look", draw); // light or dark was chosen
  draw();
})();
