// Everything here is a comfort: the page says all that it has to say without it.
var carried;
function data() {
  carried = carried || JSON.parse(document.getElementById("burnlaw-document").textContent);
  return carried;
}
function make(name, attributes, children) {
  var element = name.indexOf(":") < 0
    ? document.createElement(name)
    : document.createElementNS("http://www.w3.org/2000/svg", name.slice(4));
  Object.keys(attributes || {}).forEach(function (key) { element.setAttribute(key, attributes[key]); });
  element.append.apply(element, children || []);
  return element;
}
function digits(value, count) {
  var text = value.toPrecision(count);
  return text.indexOf("e") < 0 ? text : String(Number(text));
}
// The factors are those of the program that wrote the page.
var factors;
function units() {
  var told = document.querySelector("[data-factors]");
  factors = factors || (told ? JSON.parse(told.getAttribute("data-factors")) : {});
  return factors[document.documentElement.getAttribute("data-units")] || factors.mpa;
}
// A law whose coefficient is in mm/s at 1 MPa, in the units that are chosen.
function formula(coefficient, exponent) {
  var by = units();
  return "r = " + digits(coefficient * by.rate * Math.pow(by.pressure, -exponent), 5) + " \u00b7 P^" + exponent.toFixed(4)
    + " (" + by.rate_name + ", " + by.pressure_name + ")";
}
// Labels of an axis between two values, at least so large a share of it apart.
function ticks(low, high, log, apart) {
  function share(value) { return log ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low); }
  function clear(values) {
    return values.every(function (value, i) { return !i || share(value) - share(values[i - 1]) >= apart; });
  }
  function decades(tenths) {
    var found = [];
    for (var exponent = Math.floor(Math.log10(low)); exponent <= Math.log10(high); exponent++) {
      tenths.forEach(function (each) {
        var value = Number(each + "e" + (exponent - 1));
        if (value >= low && value <= high) found.push(value);
      });
    }
    return found.sort(function (a, b) { return a - b; });
  }
  var named = [];
  if (log) [10, 20, 50, 30, 70, 40, 60, 80, 90, 15, 25, 35, 45].forEach(function (each) {
    if (clear(decades(named.concat(each)))) named.push(each);
  });
  var found = log ? decades(named) : [];
  if (found.length > 2) return found;
  var decade = Math.pow(10, Math.floor(Math.log10((high - low) * apart)));
  [1, 2, 5, 10, 20, 50].some(function (times) {
    found = [];
    for (var k = Math.ceil(low / (times * decade)); k * times * decade <= high; k++) found.push(k * times * decade);
    return clear(found);
  });
  return found;
}
function grid(values, place, reach, across) {
  return values.reduce(function (all, value) {
    var at = place(value), text = [String(Number(value.toPrecision(6))).replace("-", "\u2212")];
    return all.concat(across
      ? [make("svg:line", { x1: at, x2: at, y1: 0, y2: reach, "class": "s-grid" }),
        make("svg:text", { x: at, y: reach + 17, "text-anchor": "middle", "class": "f-text" }, text)]
      : [make("svg:line", { x1: 0, x2: reach, y1: at, y2: at, "class": "s-grid" }),
        make("svg:text", { x: -7, y: at + 4, "text-anchor": "end", "class": "f-text" }, text)]);
  }, []);
}
// Where a value is on a picture: its axes are written beside the marks.
function plot(svg) {
  var group = svg.querySelector(".plot");
  if (!group) return null;
  function axis(name, length) {
    var words = group.getAttribute("data-" + name).split(" "), ends = words.map(Number);
    var map = ends[2] ? Math.log : function (value) { return value; };
    var back = ends[2] ? Math.exp : function (value) { return value; };
    var low = map(ends[0]), span = map(ends[1]) - low;
    return {
      low: ends[0],
      high: ends[1],
      log: ends[2],
      unit: words[3],
      at: function (value) { return length * (map(value) - low) / span; },
      value: function (at) { return back(low + span * at / length); }
    };
  }
  var size = group.getAttribute("data-size").split(" ").map(Number);
  var x = axis("x", size[0]), y = axis("y", size[1]);
  return {
    group: group,
    width: size[0],
    height: size[1],
    x: x,
    y: y,
    px: x.at,
    py: function (value) { return size[1] - y.at(value); },
    pointer: function (event) {
      var place = new DOMPoint(event.clientX, event.clientY).matrixTransform(group.getScreenCTM().inverse());
      return { x: x.value(place.x), y: y.value(size[1] - place.y) };
    }
  };
}
function key(row, column) {
  var cell = row.cells[column];
  var value = cell.getAttribute("data-sort");
  return value === null ? (cell.querySelector("a") || cell).textContent.replace("\u2296", "").trim() : value;
}
function compare(a, b) {
  if (a === b) return 0;
  if (a === "") return 1;
  if (b === "") return -1;
  var x = Number(a), y = Number(b);
  if (!isNaN(x) && !isNaN(y)) return x - y;
  return a.localeCompare(b, "en", { numeric: true });
}
function sort(table, column, heading) {
  var down = heading.getAttribute("aria-sort") === "ascending";
  table.querySelectorAll("thead th").forEach(function (th) { th.removeAttribute("aria-sort"); });
  heading.setAttribute("aria-sort", down ? "descending" : "ascending");
  var body = table.tBodies[0];
  Array.from(body.rows)
    .map(function (row, i) { return { row: row, key: key(row, column), i: i }; })
    .sort(function (a, b) {
      if (a.key === "" || b.key === "") return compare(a.key, b.key) || a.i - b.i;
      return (down ? -1 : 1) * compare(a.key, b.key) || a.i - b.i;
    })
    .forEach(function (each) { body.appendChild(each.row); });
}
document.querySelectorAll("table.sortable").forEach(function (table) {
  table.querySelectorAll("thead th").forEach(function (heading, column) {
    if (heading.hasAttribute("data-fixed")) return;
    var button = document.createElement("button");
    button.type = "button";
    button.className = "sort";
    button.textContent = heading.textContent;
    button.addEventListener("click", function () { sort(table, column, heading); });
    heading.replaceChildren(button);
  });
});
document.querySelectorAll("figure").forEach(function (figure) {
  if (!figure.querySelector(".hit")) return;
  var readout = document.createElement("p");
  readout.className = "readout";
  readout.setAttribute("aria-hidden", "true");
  var caption = figure.querySelector("figcaption");
  figure.insertBefore(readout, caption);
  figure.addEventListener("pointerover", function (event) {
    var hit = event.target.closest ? event.target.closest(".hit") : null;
    if (hit) readout.textContent = hit.querySelector("title").textContent;
  });
  figure.addEventListener("pointerleave", function () { readout.textContent = ""; });
});
document.querySelectorAll("[data-copy]").forEach(function (line) {
  var button = document.createElement("button");
  button.type = "button";
  button.className = "copy";
  button.textContent = "Copy";
  button.setAttribute("aria-label", "Copy " + line.getAttribute("data-copy"));
  button.addEventListener("click", function () {
    var done = function () { button.textContent = "Copied"; setTimeout(function () { button.textContent = "Copy"; }, 1500); };
    var text = line.getAttribute("data-copy");
    if (navigator.clipboard && window.isSecureContext) {
      navigator.clipboard.writeText(text).then(done, function () { select(line); });
    } else {
      // A page opened from a folder has no clipboard of that kind.
      var area = document.createElement("textarea");
      area.value = text;
      document.body.appendChild(area);
      area.select();
      var copied = document.execCommand("copy");
      area.remove();
      button.focus();
      if (copied) done();
    }
  });
  line.appendChild(button);
});
// A page that was sent alone has its files inside.
document.querySelectorAll("a[data-file]").forEach(function (link) {
  var name = link.getAttribute("data-file");
  link.addEventListener("click", function () {
    var files = JSON.parse(document.getElementById("burnlaw-files").textContent);
    var text = name in files ? files[name] : document.getElementById("burnlaw-document").textContent;
    link.href = URL.createObjectURL(new Blob([text], { type: name.endsWith(".csv") ? "text/csv" : "application/json" }));
    link.download = name;
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 60000);
  });
});
function select(line) {
  window.getSelection().selectAllChildren(line);
}
// A link to a folded part unfolds it.
function reveal() {
  var at = document.getElementById(location.hash.slice(1));
  for (var part = at && at.closest("details"); part; part = part.parentElement.closest("details")) part.open = true;
  if (at) at.scrollIntoView();
}
window.addEventListener("hashchange", reveal);
document.addEventListener("click", function (event) {
  var link = event.target.closest('a[href^="#"]');
  if (link && link.hash === location.hash) reveal();
});
if (location.hash) reveal();
