// The words of the page in the units that are chosen: numbers by their unit, columns by their heading, axes anew.
function factor(unit) {
  var by = units();
  return unit === "MPa" ? by.pressure : unit === "kPa" ? by.pressure / 1000 : unit === "mm" ? by.length : by.rate;
}
function unitName(unit) {
  return units()[(/Pa$/.test(unit) ? "pressure" : unit === "mm" ? "length" : "rate") + "_name"];
}
function every(pattern) { return new RegExp(factors[pattern], "g"); }
// An uncertainty has two digits. Without one a last place stands for at most as much as before, and three digits are
// kept, four of a whole number. What the cell is sorted by is its number in full.
function numbers(text, by, full) {
  function size(value) { return Math.floor(Math.log10(value) + 1e-9); }
  function written(value, decimals, whole) {
    var unit = Math.pow(10, -decimals);
    var shown = decimals < 0 ? String(Math.round(value / unit) * unit) : value.toFixed(decimals);
    return whole ? String(Number(shown)) : shown;
  }
  return by === 1 ? text : text.replace(every("number"), function (all, number, std) {
    var digits = number.split(".")[1] || "", decimals = digits.length - size(by);
    var sign = number.replace(/[\d.]+$/, ""), value = Math.abs(full || number.slice(sign.length)) * by;
    full = 0;
    if (std > 0) decimals = Math.min(1, std.replace(/^[0.]+/, "").replace(".", "").length - 1) - size(std * by);
    else if (value) decimals = Math.max(decimals, (digits ? 2 : 3) - size(value));
    return sign + written(value, decimals, !digits && !std) + (std ? " \u00b1 " + written(std * by, decimals) : "");
  });
}
function inUnits(words) {
  return units() === factors.mpa ? words : words.replace(every("law"), function (all, a, between, n) {
    return digits(a * units().rate * Math.pow(units().pressure, -n), 4) + between + n;
  }).replace(every("run"), function (all, before, run, blank, unit, interval) {
    return before + numbers(run, factor(unit)) + blank + unitName(unit) + numbers(interval, factor(unit));
  }).replace(every("name"), function (all, before, unit) { return before + unitName(unit); });
}
function axes(svg) {
  var on = plot(svg);
  if (on) [on.x, on.y].forEach(function (axis, i) {
    var group = on.group.querySelector(i ? ".up" : ".across"), by = axis.unit && factor(axis.unit);
    if (!by) return;
    group.written = group.written || Array.from(group.childNodes);
    group.replaceChildren.apply(group, by === 1 ? group.written : grid(
      ticks(axis.low * by, axis.high * by, axis.log, (i ? 17 : 32) * (innerWidth < 768 ? 1.65 : 1) / (i ? on.height : on.width)),
      function (value) { return (i ? on.py : on.px)(value / by); }, i ? on.width : on.height, !i));
  });
}
(function () {
  if (!units()) return;
  var written;
  function collect() {
    written = [];
    var walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT), node;
    while ((node = walker.nextNode())) {
      var parent = node.parentElement;
      if (!/\d|MPa|mm/.test(node.data) || parent.closest(".formulas,[translate],code,.live,.across,.up,.readout")) continue;
      var cell = parent.closest("td"), head = cell && cell.closest("table").tHead;
      var unit = head && head.rows[0].cells[cell.cellIndex].textContent.match(factors.name);
      written.push({ node: node, text: node.data, unit: unit && !node.data.match(factors.run) ? unit[2] : null,
        full: cell && node === cell.firstChild && Number(cell.getAttribute("data-sort")) });
    }
    document.querySelectorAll("main svg[aria-label]").forEach(function (svg) {
      written.push({ node: svg.getAttributeNode("aria-label"), text: svg.getAttribute("aria-label") });
    });
  }
  document.addEventListener("burnlaw-units", function () {
    var plain = units() === factors.mpa;
    if (plain && !written) return;
    if (!written) collect();
    written.forEach(function (each) {
      each.node.nodeValue = plain ? each.text
        : !each.unit ? inUnits(each.text)
        : each.text.indexOf("\u00d7 10") < 0 ? numbers(each.text, factor(each.unit), each.full) : each.text + " " + each.unit;
    });
    document.querySelectorAll("main figure svg").forEach(axes);
  });
  var chosen;
  try { chosen = localStorage.getItem("burnlaw-units"); } catch (none) { /* nothing is remembered */ }
  chosen = chosen || document.documentElement.getAttribute("data-units") || "mpa";
  function choose(key) {
    document.documentElement.setAttribute("data-units", key);
    document.dispatchEvent(new Event("burnlaw-units"));
  }
  var fieldset = make("fieldset", { "class": "units" }, [make("legend", {}, ["Units"])]);
  [["mpa", "MPa, mm"], ["bar", "bar, mm"], ["psi", "psi, in"]].forEach(function (each) {
    if (document.querySelector(".formula") && !document.querySelector(".u-" + each[0])) return;
    var radio = make("input", { type: "radio", name: "units", value: each[0] });
    radio.checked = each[0] === chosen;
    radio.addEventListener("change", function () {
      choose(each[0]);
      try { localStorage.setItem("burnlaw-units", each[0]); } catch (none) { /* not remembered, then */ }
    });
    fieldset.append(make("label", {}, [radio, each[1]]));
  });
  document.querySelector("header").append(fieldset);
  choose(chosen);
})();
