// Pressure over time: a cursor that reads the lines, and a closer look at a part of them.
function course(figure) {
  var svg = figure.querySelector("svg.chart"), on = svg && plot(svg);
  if (!on) return;
  var sheet = on.group.querySelector("svg"), across = on.group.querySelector(".across"), over = on.group.querySelector(".over");
  var hits = on.group.querySelector(".hits");
  var names = figure.dataset.names ? JSON.parse(figure.dataset.names) : null;
  var paths = sheet.querySelectorAll("path");
  var lines = Array.from(paths).map(function (path) {
    return (path.getAttribute("d").match(/-?[\d.]+ -?[\d.]+/g) || []).map(function (pair) { return pair.split(" ").map(Number); });
  });
  // Over the web burned, where the program gave it: each line is moved sideways, and shows no more than it gave.
  var byTime = lines, axis = { low: on.x.low, high: on.x.high, unit: " s" };
  var byWeb = figure.dataset.webs && JSON.parse(figure.dataset.webs).map(function (steps, i) {
    var x = 0, web = 0, known = [];
    for (var k = 0; k < steps.length; k += 2) known.push([(x += steps[k]) / 10, (web += steps[k + 1]) * on.width / 1000]);
    return known.length < 2 ? [] : byTime[i].map(function (at) { return at[0]; })
      .filter(function (at) { return known[0][0] < at && at < known[known.length - 1][0]; })
      .concat(known.map(function (at) { return at[0]; })).sort(function (a, b) { return a - b; })
      .map(function (at) { return [between(known, at), between(byTime[i], at)]; });
  });
  var from = axis.low, to = axis.high, middle = (from + to) / 2;
  var closer = make("svg:g"), line = make("svg:line", { y1: 0, y2: on.height });
  on.group.append(closer, make("svg:g", { "class": "marker" }, [line]));
  var said = make("p", { "class": "live said", role: "status" });
  var slider = make("input", { type: "range", min: 0, max: 400, step: 1, "aria-label": "Place of the cursor" });
  function px(value) { return on.width * (value - from) / (to - from); }
  function place(value) { return on.width * (value - axis.low) / (axis.high - axis.low); }
  function between(path, x) {
    for (var i = 1; i < path.length; i++) {
      if (path[i - 1][0] <= x && x <= path[i][0]) {
        var share = path[i][0] > path[i - 1][0] ? (x - path[i - 1][0]) / (path[i][0] - path[i - 1][0]) : 0;
        return path[i - 1][1] + share * (path[i][1] - path[i - 1][1]);
      }
    }
    return NaN;
  }
  function read(path, value) { return on.y.value(on.height - between(path, place(value))); }
  function pressure(value) {
    var by = units();
    return on.y.unit ? digits(value * by.pressure, 3) + " " + by.pressure_name : digits(value, 3) + " N";
  }
  function cursor(value, height) {
    middle = Math.min(to, Math.max(from, value));
    slider.value = 400 * (middle - from) / (to - from);
    line.setAttribute("x1", px(middle));
    line.setAttribute("x2", px(middle));
    var values = lines.map(function (path) { return read(path, middle); });
    var seen = values.map(function (value, i) { return { value: value, i: i }; })
      .filter(function (each) { return isFinite(each.value); })
      .sort(function (a, b) { return a.value - b.value; });
    var text = digits(middle, axis.web ? 3 : 4) + axis.unit + ": ";
    if (!seen.length) text += "no record";
    else if (!names) {
      text += pressure(values[0]) + " measured" + (isFinite(values[1]) ? ", " + pressure(values[1]) + " predicted" : "");
    } else if (height === undefined) {
      text += seen.length + " traces, " + names[seen[0].i] + " lowest with " + pressure(seen[0].value) + ", "
        + names[seen[seen.length - 1].i] + " highest with " + pressure(seen[seen.length - 1].value);
    } else {
      seen.sort(function (a, b) { return Math.abs(a.value - height) - Math.abs(b.value - height); });
      text += names[seen[0].i] + " " + pressure(seen[0].value);
    }
    said.textContent = text;
  }
  function look(low, high) {
    var most = axis.high - axis.low;
    var span = Math.min(most, Math.max(most / 200, high - low));
    from = Math.max(axis.low, Math.min(axis.high - span, low));
    to = from + span;
    var whole = span === most;
    sheet.setAttribute("viewBox", place(from) + " 0 " + (place(to) - place(from)) + " " + on.height);
    sheet.setAttribute("preserveAspectRatio", "none");
    // what is written for the whole record is not where it was
    [across, over, hits].forEach(function (each) { if (each) each.style.display = whole && !axis.web ? "" : "none"; });
    closer.replaceChildren();
    if (!whole || axis.web) {
      closer.append.apply(closer, grid(ticks(from, to, 0, 0.15), px, on.height, true));
    }
    cursor(middle);
  }
  function button(words, act) {
    var made = make("button", { type: "button", "class": "copy" }, [words]);
    made.addEventListener("click", act);
    return made;
  }
  function zoom(factor) { look(middle - (middle - from) * factor, middle + (to - middle) * factor); }
  function move(share) { look(from + share * (to - from), to + share * (to - from)); }
  slider.addEventListener("input", function () { cursor(from + (to - from) * slider.value / 400); });
  svg.addEventListener("pointermove", function (event) {
    var at = on.pointer(event);
    cursor(from + on.px(at.x) / on.width * (to - from), at.y);
  });
  svg.addEventListener("dblclick", function () { zoom(0.5); });
  document.addEventListener("burnlaw-units", function () { cursor(middle); });
  figure.insertBefore(make("div", { "class": "live" }, [
    said, slider,
    make("p", { "class": "fields" }, [
      button("Closer", function () { zoom(0.5); }), button("Farther", function () { zoom(2); }),
      button("Earlier", function () { move(-0.25); }), button("Later", function () { move(0.25); }),
      button("Whole record", function () { look(axis.low, axis.high); })])]), figure.querySelector("figcaption"));
  if (byWeb && byWeb.some(function (each) { return each.length; })) {
    var title = Array.from(on.group.children).find(function (each) { return each.tagName === "text"; });
    var written = title.textContent, drawn = Array.from(paths, function (path) { return path.getAttribute("d"); });
    figure.querySelector(".live .fields").prepend.apply(figure.querySelector(".live .fields"), [false, true].map(function (web) {
      var radio = make("input", { type: "radio", name: "over-" + figure.dataset.names });
      radio.checked = !web;
      radio.addEventListener("change", function () {
        axis = web ? { low: 0, high: 100, unit: " % of the web", web: web } : { low: on.x.low, high: on.x.high, unit: " s" };
        lines = web ? byWeb : byTime;
        title.textContent = web ? "web burned, % of the whole" : written;
        paths.forEach(function (path, i) {
          path.setAttribute("d", !web ? drawn[i] : byWeb[i].length ? "M" + byWeb[i].map(function (at) {
            return at[0].toFixed(2) + " " + at[1].toFixed(2);
          }).join("L") : "M0 0");
        });
        middle = (axis.low + axis.high) / 2;
        look(axis.low, axis.high);
      });
      return make("label", {}, [radio, web ? " over web burned" : " over time"]);
    }));
  }
  cursor(middle);
}
document.querySelectorAll("figure.course").forEach(course);
