// Another report beside this one: its file is read here and goes nowhere.
function lawsOf(formulation) {
  var several = formulation.regimes && formulation.regimes.laws.length > 1;
  var laws = several ? formulation.regimes.laws : formulation.single_law ? [formulation.single_law] : [];
  return laws.filter(function (law) {
    return law.coefficient.value > 0 && isFinite(law.exponent.value) && law.pressure_low.value > 0
      && law.pressure_high.value > law.pressure_low.value && law.curve.length > 1
      && law.curve.every(function (at) { return at.pressure > 0 && at.rate > 0; });
  });
}
function foreign(text) {
  var page = text.match(/id="burnlaw-document">([\s\S]*?)<\/script>/);
  var other = JSON.parse(page ? page[1] : text);
  if (other.format !== data().format) throw new Error("its format is " + String(other.format).slice(0, 60));
  return other;
}
function beside(shown) {
  var width = 364, height = 225, all = [];
  shown.forEach(function (each) { each.laws.forEach(function (law) { all = all.concat(law.curve); }); });
  function ends(values, by) {
    var low = by * Math.min.apply(null, values) / 1.15, high = by * Math.max.apply(null, values) * 1.15;
    return { low: low, high: high, at: function (value) { return Math.log(value / low) / Math.log(high / low); } };
  }
  var by = units(), x = ends(all.map(function (at) { return at.pressure; }), by.pressure);
  var y = ends([].concat.apply([], all.map(function (at) {
    return [at.rate, at.prediction_low, at.prediction_high].filter(function (value) { return value > 0; });
  })), by.rate);
  function across(value) { return x.at(value) * width; }
  function up(value) { return (1 - y.at(value)) * height; }
  function place(pressure, rate) { return across(pressure * by.pressure).toFixed(1) + " " + up(rate * by.rate).toFixed(1); }
  var group = make("svg:g", { transform: "translate(44 26)" });
  group.append.apply(group, grid(ticks(x.low, x.high, 1, 0.09), across, height, true)
    .concat(grid(ticks(y.low, y.high, 1, 0.1), up, width)));
  shown.forEach(function (each, i) {
    each.laws.forEach(function (law) {
      var banded = law.curve.filter(function (at) { return at.prediction_low > 0 && at.prediction_high > 0; });
      if (banded.length > 1) {
        group.append(make("svg:path", { "class": "f-s" + (i + 1), "fill-opacity": 0.15, d: "M"
          + banded.map(function (at) { return place(at.pressure, at.prediction_high); }).join("L") + "L"
          + banded.reverse().map(function (at) { return place(at.pressure, at.prediction_low); }).join("L") + "Z" }));
      }
      group.append(make("svg:path", { "class": "s-s" + (i + 1), fill: "none", "stroke-width": 2.2, "stroke-dasharray": i ? "7 4" : "none",
        d: "M" + law.curve.map(function (at) { return place(at.pressure, at.rate); }).join("L") }));
    });
  });
  return make("svg:svg", { "class": "chart", viewBox: "0 0 420 300", "font-size": 14, role: "img", "aria-label":
    "Burning rate over absolute pressure, both logarithmic: " + shown.map(function (each) { return each.title; }).join(" and ") },
    [make("svg:text", { x: 4, y: 14, "class": "f-text" }, ["burning rate, " + by.rate_name]), group,
      make("svg:text", { x: 226, y: 287, "text-anchor": "middle", "class": "f-text" }, ["absolute pressure, " + by.pressure_name])]);
}
(function () {
  var main = document.querySelector("main");
  if (!document.querySelector(".formula") || !main) return;
  var choose = make("input", { type: "file", accept: ".json,.html", id: "other-report" });
  var own = make("select", { "aria-label": "Propellant of this report" }), its = make("select", { "aria-label": "Propellant of the other report" });
  var pickers = make("p", { "class": "fields" }, [own, " and ", its]);
  var said = make("p", { "class": "said", role: "status" }), out = make("div");
  var other = null;
  pickers.hidden = true;
  function fill(select, from) {
    select.replaceChildren.apply(select, from.formulations.filter(function (each) { return lawsOf(each).length; })
      .map(function (each) { return make("option", { value: each.id }, [each.title]); }));
  }
  function formulation(select, from) { return from.formulations.find(function (each) { return each.id === select.value; }); }
  function show() {
    if (!other) return;
    var by = units();
    var shown = [[own, data(), "This report"], [its, other, "The other"]].map(function (each) {
      var found = formulation(each[0], each[1]);
      return { title: found.title, laws: lawsOf(found), from: each[2] + ", " + each[1].campaign.title };
    });
    out.replaceChildren(beside(shown), make("ul", {}, shown.map(function (each, i) {
      return make("li", {}, [each.from + ", " + (i ? "dashed" : "solid") + ": " + each.title + ": " + each.laws.map(function (law) {
        return formula(law.coefficient.value, law.exponent.value) + " from " + digits(law.pressure_low.value * by.pressure, 2) + " to "
          + digits(law.pressure_high.value * by.pressure, 2) + " " + by.pressure_name;
      }).join("; ")]);
    })), make("p", { "class": "hint" }, ["They were measured separately: gauges, batches, temperatures and reduction methods may"
      + " differ by more than these bands, which are for the next firing of each. The command compare tests whether the laws differ."]));
  }
  function take(file) {
    file.text().then(function (text) {
      other = foreign(text);
      fill(its, other);
      if (!its.options.length) throw new Error("it has no law");
      pickers.hidden = false;
      said.textContent = "Read: " + file.name;
      show();
    }).catch(function (wrong) {
      other = null;
      pickers.hidden = true;
      out.replaceChildren();
      said.textContent = file.name + " cannot be compared (" + (wrong instanceof SyntaxError ? "it is not JSON" : wrong instanceof TypeError
        ? "members are missing" : wrong.message) + "). Take a burnlaw.json or an index.html of another report.";
    });
  }
  choose.addEventListener("change", function () { if (choose.files[0]) take(choose.files[0]); });
  [own, its].forEach(function (select) { select.addEventListener("change", show); });
  document.addEventListener("burnlaw-units", show);
  document.addEventListener("dragover", function (event) { event.preventDefault(); });
  document.addEventListener("drop", function (event) {
    event.preventDefault();
    if (event.dataTransfer.files[0]) take(event.dataTransfer.files[0]);
  });
  fill(own, data());
  if (!own.options.length) return;
  document.getElementById("laws").closest("section").before(make("details", { "class": "live" }, [
    make("summary", {}, ["Compare with another report"]),
    make("p", {}, [make("label", { "for": choose.id }, ["Choose its burnlaw.json or index.html, or drop it on this page: "]), choose]),
    pickers, said, out]));
  document.addEventListener("drop", function () { out.closest("details").open = true; });
})();
