// Pressure over time: a cursor that reads the lines, and a closer look at a part of them.
function course(figure) {
  var svg = figure.querySelector("svg.chart"), on = svg && plot(svg);
  if (!on) return;
  var sheet = on.group.querySelector("svg"), across = on.group.querySelector(".across"), over = on.group.querySelector(".over");
  var hits = on.group.querySelector(".hits");
  var names = figure.dataset.names ? JSON.parse(figure.dataset.names) : null;
  var lines = Array.from(sheet.querySelectorAll("path")).map(function (path) {
    return (path.getAttribute("d").match(/-?[\d.]+ -?[\d.]+/g) || []).map(function (pair) { return pair.split(" ").map(Number); });
  });
  var from = on.x.low, to = on.x.high, middle = (from + to) / 2;
  var closer = make("svg:g"), line = make("svg:line", { y1: 0, y2: on.height });
  on.group.append(closer, make("svg:g", { "class": "marker" }, [line]));
  var said = make("p", { "class": "live said", role: "status" });
  var slider = make("input", { type: "range", min: 0, max: 400, step: 1, "aria-label": "Time of the cursor" });
  function px(time) { return on.width * (time - from) / (to - from); }
  function read(path, time) {
    var x = on.px(time);
    for (var i = 1; i < path.length; i++) {
      if (path[i - 1][0] <= x && x <= path[i][0]) {
        var share = path[i][0] > path[i - 1][0] ? (x - path[i - 1][0]) / (path[i][0] - path[i - 1][0]) : 0;
        return on.y.value(on.height - path[i - 1][1] - share * (path[i][1] - path[i - 1][1]));
      }
    }
    return NaN;
  }
  function pressure(value) {
    var by = units();
    return digits(value * by.pressure, 3) + " " + by.pressure_name;
  }
  function cursor(time, height) {
    middle = Math.min(to, Math.max(from, time));
    slider.value = 400 * (middle - from) / (to - from);
    line.setAttribute("x1", px(middle));
    line.setAttribute("x2", px(middle));
    var values = lines.map(function (path) { return read(path, middle); });
    var seen = values.map(function (value, i) { return { value: value, i: i }; })
      .filter(function (each) { return isFinite(each.value); })
      .sort(function (a, b) { return a.value - b.value; });
    var text = digits(middle, 4) + " s: ";
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
    var most = on.x.high - on.x.low;
    var span = Math.min(most, Math.max(most / 200, high - low));
    from = Math.max(on.x.low, Math.min(on.x.high - span, low));
    to = from + span;
    var whole = span === most;
    sheet.setAttribute("viewBox", on.px(from) + " 0 " + (on.px(to) - on.px(from)) + " " + on.height);
    sheet.setAttribute("preserveAspectRatio", "none");
    // what is written for the whole record is not where it was
    [across, over, hits].forEach(function (each) { if (each) each.style.display = whole ? "" : "none"; });
    closer.replaceChildren();
    if (!whole) {
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
    cursor(from + (at.x - on.x.low) / (on.x.high - on.x.low) * (to - from), at.y);
  });
  svg.addEventListener("dblclick", function () { zoom(0.5); });
  document.addEventListener("burnlaw-units", function () { cursor(middle); });
  figure.insertBefore(make("div", { "class": "live" }, [
    said, slider,
    make("p", { "class": "fields" }, [
      button("Closer", function () { zoom(0.5); }), button("Farther", function () { zoom(2); }),
      button("Earlier", function () { move(-0.25); }), button("Later", function () { move(0.25); }),
      button("Whole record", function () { look(on.x.low, on.x.high); })])]), figure.querySelector("figcaption"));
  cursor(middle);
}
document.querySelectorAll("figure.course").forEach(course);
