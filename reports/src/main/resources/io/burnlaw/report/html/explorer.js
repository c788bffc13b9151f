// Which throat does what: read between the rows of a table that the program made, and never beyond them.
function throatFigures(table, throat) {
  var above = 1;
  while (above < table.throat.length - 1 && table.throat[above] < throat) above++;
  var low = table.throat[above - 1];
  var share = Math.log(throat / low) / Math.log(table.throat[above] / low);
  var figures = {};
  ["surface_over_throat", "mean", "mean_low", "mean_high", "max", "max_low", "max_high", "burn_time"].forEach(function (key) {
    figures[key] = Math.exp((1 - share) * Math.log(table[key][above - 1]) + share * Math.log(table[key][above]));
  });
  return figures;
}
function explore(place, plan) {
  var table = plan.throat_table, last = table.throat.length - 1;
  var smallest = table.throat[0], largest = table.throat[last];
  var id = "throat-" + Array.prototype.indexOf.call(document.querySelectorAll(".explorer"), place);
  var slider = make("input", { type: "range", min: 0, max: 1000, step: 1, id: id + "-slider" });
  var typed = make("input", { type: "number", step: "any", id: id + "-typed", inputmode: "decimal" });
  var ratio = make("input", { type: "number", step: "any", id: id + "-ratio", inputmode: "decimal" });
  var unit = make("span");
  var said = make("p", { role: "status", "class": "said" });
  var list = make("dl");
  var out = {};
  [["mean", "Mean pressure"], ["max", "Highest pressure"], ["burn_time", "Burn time"], ["room", "Peak against limit"]]
    .forEach(function (each) {
      out[each[0]] = make("dd");
      list.append(make("dt", {}, [each[1]]), out[each[0]]);
    });
  var svg = place.querySelector("svg.chart"), on = svg && plot(svg), marker;
  if (on) {
    marker = make("svg:g", { "class": "marker" }, [
      make("svg:line", { y1: 0, y2: on.height }), make("svg:circle", { r: 3.2 }), make("svg:circle", { r: 3.2 })]);
    on.group.append(marker);
    svg.classList.add("drag");
    var drag = function (event) {
      if (event.type === "pointerdown" || event.buttons & 1) show(on.pointer(event).x);
    };
    svg.addEventListener("pointerdown", drag);
    svg.addEventListener("pointermove", drag);
  }
  var throat = Math.min(largest, Math.max(smallest, plan.next ? plan.next.throat_diameter.value : table.throat[last >> 1]));
  function pressure(figures, key) {
    var by = units();
    return digits(figures[key] * by.pressure, 3) + " " + by.pressure_name + " (" + digits(figures[key + "_low"] * by.pressure, 3)
      + " to " + digits(figures[key + "_high"] * by.pressure, 3) + ")";
  }
  function show(wanted, from) {
    if (!(wanted > 0)) return;
    throat = Math.min(largest, Math.max(smallest, wanted));
    var figures = throatFigures(table, throat), by = units();
    slider.value = Math.round(1000 * Math.log(throat / smallest) / Math.log(largest / smallest));
    slider.setAttribute("aria-valuetext", digits(throat * by.length, 3) + " " + by.length_name);
    if (from !== typed) typed.value = digits(throat * by.length, 4);
    if (from !== ratio) ratio.value = digits(figures.surface_over_throat, 4);
    unit.textContent = by.length_name;
    out.mean.textContent = pressure(figures, "mean");
    out.max.textContent = pressure(figures, "max");
    out.burn_time.textContent = digits(figures.burn_time, 3) + " s";
    ["mean", "max", "burn_time"].forEach(function (key) { out[key].setAttribute("data-value", figures[key]); });
    if (plan.allowed_pressure) {
      out.room.textContent = "the upper prediction of the peak is " + Math.round(100 * figures.max_high / plan.allowed_pressure.value)
        + " % of " + digits(plan.allowed_pressure.value * by.pressure, 3) + " " + by.pressure_name + ", "
        + inUnits(plan.allowed_because);
    }
    var words = table.remarks.filter(function (each) { return each.from <= throat && throat <= each.to; })
      .map(function (each) { return each.text; });
    if (wanted <= smallest) words.unshift(table.smaller);
    if (wanted > largest) words.unshift(table.larger);
    said.textContent = inUnits(words.join(" "));
    if (marker) {
      var x = on.px(throat);
      marker.children[0].setAttribute("x1", x);
      marker.children[0].setAttribute("x2", x);
      [figures.mean, figures.max].forEach(function (each, i) {
        marker.children[1 + i].setAttribute("cx", x);
        marker.children[1 + i].setAttribute("cy", on.py(each));
      });
    }
  }
  slider.addEventListener("input", function () {
    var at = slider.value / 1000;
    // the ends are the ends to the last digit
    show(at === 0 ? smallest : at === 1 ? largest : smallest * Math.pow(largest / smallest, at), slider);
  });
  typed.addEventListener("input", function () { show(typed.value / units().length, typed); });
  ratio.addEventListener("input", function () {
    show(throat * Math.sqrt(throatFigures(table, throat).surface_over_throat / ratio.value), ratio);
  });
  [typed, ratio].forEach(function (field) { field.addEventListener("change", function () { show(throat); }); });
  document.addEventListener("burnlaw-units", function () { show(throat); });
  place.append(make("fieldset", { "class": "live" }, [
    make("legend", {}, ["Try a throat"]),
    make("p", { "class": "fields" }, [
      make("label", { "for": typed.id }, ["Throat"]), typed, unit,
      make("label", { "for": ratio.id, title: "greatest burning surface over the area of the throat" }, ["K", make("sub", {}, ["n"]), ", greatest"]), ratio]),
    make("p", {}, [make("label", { "for": slider.id, "class": "unseen" }, ["Throat, from small to large"]), slider]),
    list, said,
    make("p", { "class": "hint" }, ["For the grain named here; in brackets the " + Math.round(100 * table.level)
      + " % prediction. Drag in the picture, move the slider or type. Interpolated in throat_table of this"
      + " document. No number replaces a proof test."])]));
  show(throat);
}
var explorers = document.querySelectorAll(".explorer");
if (explorers.length) {
  data().plans.filter(function (plan) { return plan.throat_table; }).forEach(function (plan, i) { explore(explorers[i], plan); });
}
