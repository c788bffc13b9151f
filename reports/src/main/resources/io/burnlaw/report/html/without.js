// A firing left out: the laws without it are in the document; here one of them is drawn beside the law.
var without = [];
function leave(article, formulation) {
  var svg = article.querySelector(".picture svg");
  var on = svg && plot(svg), hits = svg ? Array.from(svg.querySelectorAll(".hit[data-id]")) : [];
  if (!on || !formulation.without) return;
  var points = {};
  formulation.points.forEach(function (point) { points[point.id] = point; });
  var drawn = make("svg:g", { "class": "without" });
  on.group.insertBefore(drawn, on.group.querySelector(".hits"));
  var said = make("p", { "class": "live said", role: "status" });
  var usual = "Choose a point, or a firing in a table, to see the law without it.";
  said.textContent = usual;
  svg.closest("figure").append(said);
  var chosen = null;
  var byPoint = {}, byFiring = {};
  article.querySelectorAll("tr[data-id]").forEach(function (row) { byPoint[row.dataset.id] = row; });
  document.querySelectorAll("tr[data-firing]").forEach(function (row) { byFiring[row.dataset.firing] = row; });
  function rows(point) {
    return [byPoint[point.id], byFiring[point.firing] || byFiring[point.id]].filter(Boolean);
  }
  function changed(share, digitsShown) {
    return digits(Math.abs(100 * share), digitsShown) + " % " + (share < 0 ? "lower" : "higher");
  }
  function sentence(point, change) {
    var law = formulation.use_laws[change.law], by = units();
    var std = Math.sqrt(law.covariance[0][0]);
    return (formulation.use_laws.length > 1 && law.regime ? law.regime + ": " : "") + formula(change.coefficient, change.exponent) + ". At "
      + digits(law.reference_pressure.value * by.pressure, 3) + " " + by.pressure_name + " the rate is "
      + changed(change.rate_change, 2) + (std > 0 ? " (" + digits(Math.abs(Math.log1p(change.rate_change)) / std, 2)
      + " standard uncertainties)" : "") + ", n " + digits(Math.abs(change.exponent_change), 2)
      + (change.exponent_change < 0 ? " lower." : " higher.");
  }
  function line(change) {
    var law = formulation.use_laws[change.law];
    return "M" + [law.pressure_low.value, law.pressure_high.value].map(function (p) {
      return on.px(p).toFixed(2) + " " + on.py(change.coefficient * Math.pow(p, change.exponent)).toFixed(2);
    }).join("L");
  }
  function show(id) {
    chosen = id;
    drawn.replaceChildren();
    document.querySelectorAll("tr.chosen").forEach(function (row) { row.classList.remove("chosen"); });
    document.querySelectorAll(".pick").forEach(function (button) { button.setAttribute("aria-pressed", "false"); });
    hits.forEach(function (hit) { hit.classList.toggle("chosen", hit.dataset.id === id); });
    var point = points[id];
    if (!point) {
      said.textContent = usual;
      return;
    }
    rows(point).forEach(function (row) {
      row.classList.add("chosen");
      var button = row.querySelector(".pick");
      if (button) button.setAttribute("aria-pressed", "true");
    });
    var changes = formulation.without.filter(function (each) { return each.cluster === point.cluster; });
    changes.forEach(function (each) { drawn.append(make("svg:path", { d: line(each) })); });
    said.textContent = !point.used
      ? id + " is not used for the law."
      : changes.length === 0
        ? "Without " + id + ", too few firings at different pressures are left for a law."
        : "Without " + (point.firing || id) + ": " + changes.map(function (each) { return sentence(point, each); }).join(" ");
  }
  function choose(id) {
    without.forEach(function (other) { if (other !== show) other(null); });
    show(chosen === id ? null : id);
  }
  without.push(show);
  document.addEventListener("burnlaw-units", function () { if (chosen) show(chosen); });
  // One stop of the keyboard for all points; the arrows go from one to the next, in the order of pressure.
  hits.sort(function (a, b) { return a.getAttribute("cx") - b.getAttribute("cx"); });
  if (hits.length) svg.setAttribute("role", "group");
  hits.forEach(function (hit, i) {
    hit.setAttribute("tabindex", i ? -1 : 0);
    hit.setAttribute("role", "button");
    hit.addEventListener("click", function () { choose(hit.dataset.id); });
    hit.addEventListener("keydown", function (event) {
      var step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
      var to = hits[i + step];
      if (event.key === "Enter" || event.key === " ") choose(hit.dataset.id);
      else if (event.key === "Escape") choose(chosen);
      else if (to) {
        hit.setAttribute("tabindex", -1);
        to.setAttribute("tabindex", 0);
        to.focus();
      } else return;
      event.preventDefault();
    });
  });
  Object.keys(points).forEach(function (id) {
    rows(points[id]).forEach(function (row) {
      if (row.querySelector(".pick")) return;
      var button = make("button", { type: "button", "class": "pick", "aria-pressed": "false", "aria-label": "Law without " + id },
        ["\u2296"]);
      row.addEventListener("click", function (event) {
        if (event.target.closest("a")) return;
        choose(id);
        // the picture may be screens away from the table
        if (chosen) svg.scrollIntoView({ block: "nearest" });
      });
      row.cells[0].append(" ", button);
    });
  });
}
document.querySelectorAll("article[data-formulation]").forEach(function (article) {
  leave(article, data().formulations.find(function (each) { return each.id === article.dataset.formulation; }));
});
