// Another grain: its dimensions give a surface over throat, and the table of the program what holds there and what comes of it.
function grainFigures(table, grain) {
  function weights(nodes, at) {
    return nodes.map(function (own, i) {
      return nodes.reduce(function (all, other, k) { return i === k ? all : all * (at - other) / (own - other); }, 1);
    });
  }
  function surface(web) {
    var core = grain.core + 2 * web, length = grain.length - 2 * web;
    return grain.segments * Math.PI * (core * length + (grain.outer * grain.outer - core * core) / 2);
  }
  // between two rows, in logarithms; beyond the ends nothing is known
  function read(from, to, at) {
    for (var i = 1; i < from.length; i++) {
      if (from[i - 1] <= at && at <= from[i]) {
        return to[i - 1] * Math.pow(to[i] / to[i - 1], Math.log(at / from[i - 1]) / Math.log(from[i] / from[i - 1]));
      }
    }
    return NaN;
  }
  var web = (grain.outer - grain.core) / 2, area = Math.PI / 4 * grain.throat * grain.throat;
  var fresh = surface(0) / area, most = surface(Math.max(0, Math.min(web, (grain.length - 2 * grain.core) / 6))) / area;
  var core = weights(table.core, grain.core / grain.outer);
  var length = weights(table.length.map(Math.log), Math.log(grain.length / (2 * web)));
  var ratio = weights(table.surface_over_throat.map(Math.log), Math.log(most));
  function of(key, base) {
    var sum = table[key].reduce(function (all, each, i) {
      return all + each * core[Math.floor(i / ratio.length / length.length)]
        * length[Math.floor(i / ratio.length) % length.length] * ratio[i % ratio.length];
    }, 0);
    return base * Math.exp(sum / 10000);
  }
  var figures = { surface_over_throat: most };
  ["", "_low", "_high"].forEach(function (end, i) {
    var holding = table["holding" + end];
    figures["mean" + end] = read(holding, table.pressure, of("mean", fresh));
    figures["max" + end] = Math.max(read(holding, table.pressure, of("max", most)),
      read(holding, table.pressure, of("start", most)) + table.ignition[i] / area);
  });
  figures.burn_time = of("burn_time", web / read(table.pressure, table.rate, figures.mean));
  return figures;
}
function typeGrain(place, plan, number) {
  var table = plan.grain_table, outer = Math.sqrt(table.smallest_outer * table.largest_outer);
  var read = /^bates, (?:(\d+) segments?, )?core diameter ([\d.]+) mm, outer diameter ([\d.]+) mm, segment length ([\d.]+) mm/.exec(plan.grain);
  var grain = read ? { outer: +read[3], core: +read[2], length: +read[4], segments: +(read[1] || 1) }
    : { outer: outer, core: 0.4 * outer, length: 1.6 * outer, segments: 2 };
  var laws = data().formulations.find(function (each) { return each.id === plan.formulation; }).use_laws;
  var known = [laws[0].pressure_low.value, laws[laws.length - 1].pressure_high.value];
  grain.throat = plan.next ? plan.next.throat_diameter.value : plan.throat_table.throat[0];
  var fields = {}, unit = [], list = make("dl"), said = make("p", { role: "status", "class": "said" }), out = {};
  var all = [["outer", "Outer diameter"], ["core", "Core"], ["length", "Segment length"], ["segments", "Segments"], ["throat", "Throat"]];
  var rows = all.map(function (each) {
    var id = "grain-" + number + "-" + each[0], field = make("input", { type: "number", step: "any", min: 0, id: id, inputmode: "decimal" });
    fields[each[0]] = field;
    field.addEventListener("input", function () {
      grain[each[0]] = field.value / (each[0] === "segments" ? 1 : units().length);
      show();
    });
    var name = each[0] === "segments" ? "" : make("span");
    if (name) unit.push(name);
    return make("span", {}, [make("label", { "for": id }, [each[1] + " "]), field, " ", name]);
  });
  [["mean", "Mean pressure"], ["max", "Highest pressure"], ["burn_time", "Burn time"], ["ratio", "Surface over throat"]].forEach(function (each) {
    out[each[0]] = make("dd");
    list.append(make("dt", {}, [each[1]]), out[each[0]]);
  });
  function outside(value, from, to, words) {
    return value >= from * 0.9999 && value <= to * 1.0001 ? "" : words + " must be " + digits(from, 3) + " to " + digits(to, 3) + ". ";
  }
  function show() {
    var by = units(), last = table.core.length - 1, end = table.length.length - 1;
    var wrong = ["outer", "core", "length", "throat"].every(function (key) { return grain[key] > 0; }) && grain.core < grain.outer
      && grain.segments >= 1 && grain.segments % 1 === 0
      ? outside(grain.outer * by.length, table.smallest_outer * by.length, table.largest_outer * by.length,
        "The outer diameter in " + by.length_name)
        + outside(grain.core / grain.outer, table.core[0], table.core[last], "Core over outer diameter")
        + outside(grain.length / (grain.outer - grain.core), table.length[0], table.length[end],
          "Segment length over the difference of the diameters")
      : "Type diameters and a length above 0, the core less than the outer diameter, and a whole number of segments. ";
    var figures = wrong ? {} : grainFigures(table, grain), ratios = table.surface_over_throat, most = figures.surface_over_throat;
    if (most < ratios[0] * 0.9999) wrong = "The throat is too large: below this pressure the law is not known, or the throat may not choke.";
    if (most > ratios[ratios.length - 1] * 1.0001) wrong = "Not to be drilled: the peak would be above "
      + digits(plan.allowed_pressure.value * by.pressure, 3) + " " + by.pressure_name + ", " + inUnits(plan.allowed_because) + ".";
    if (!wrong && figures.burn_time < table.shortest_burn) wrong = "Burns shorter than " + table.shortest_burn + " s are not in the table.";
    if (!wrong && !(figures.mean > 0 && figures.max > 0)) wrong = "This is outside the table.";
    ["mean", "max"].forEach(function (key) {
      out[key].textContent = wrong ? "\u2013" : digits(figures[key] * by.pressure, 3) + " " + by.pressure_name
        + (figures[key + "_low"] > 0 && figures[key + "_high"] > 0 ? " (" + digits(figures[key + "_low"] * by.pressure, 3) + " to "
          + digits(figures[key + "_high"] * by.pressure, 3) + ")" : "");
    });
    out.burn_time.textContent = wrong ? "\u2013" : digits(figures.burn_time, 3) + " s";
    out.ratio.textContent = wrong ? "\u2013" : digits(most, 3) + " at most";
    ["mean", "max", "burn_time"].forEach(function (key) { out[key].setAttribute("data-value", wrong ? "" : figures[key]); });
    if (!wrong && !(figures.max_high <= plan.allowed_pressure.value)) wrong = "Not to be drilled: the upper prediction of the peak is above "
      + digits(plan.allowed_pressure.value * by.pressure, 3) + " " + by.pressure_name + ", " + inUnits(plan.allowed_because) + ".";
    else if (!wrong && plan.motor.slow_below && !(figures.mean_low >= plan.motor.slow_below.value)) wrong = "May burn slowly: the slow regime is below "
      + digits(plan.motor.slow_below.value * by.pressure, 3) + " " + by.pressure_name + ".";
    if (!wrong && figures.max > known[1]) wrong = "Extrapolated: above " + digits(known[1] * by.pressure, 3) + " " + by.pressure_name
      + ", the highest pressure of the law.";
    else if (!wrong && figures.mean < known[0]) wrong = "Extrapolated: below " + digits(known[0] * by.pressure, 3) + " " + by.pressure_name
      + ", the lowest pressure of the law.";
    said.textContent = wrong;
  }
  function write() {
    all.forEach(function (each) {
      fields[each[0]].value = each[0] === "segments" ? grain.segments : Number((grain[each[0]] * units().length).toPrecision(4));
    });
    unit.forEach(function (each) { each.textContent = units().length_name; });
    show();
  }
  document.addEventListener("burnlaw-units", write);
  place.querySelector("fieldset").append(make("details", {}, [make("summary", {}, ["Type another grain"]),
    make("p", { "class": "fields" }, rows), list, said,
    make("p", { "class": "hint" }, ["Equal segments that burn at core and both ends, all lit at once, in a chamber 1.1 times their cylinder;"
      + " the law, c*, density and igniter of these firings. Interpolated in grain_table of this document: mean, peak and burn time are"
      + " within " + 100 * table.agrees_within + " % of the command plan for that grain, the ends of the intervals within "
      + 100 * table.ends_within + " %. No number replaces a proof test."])]));
  write();
}
data().plans.filter(function (plan) { return plan.throat_table; }).forEach(function (plan, i) {
  if (plan.grain_table) typeGrain(document.querySelectorAll(".explorer")[i], plan, i);
});
