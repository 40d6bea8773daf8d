/*
 * Makes the timeline of a page move: reads the packed channels, draws them with uPlot, and ties marks, table rows and
 * track to one another. Without it the page shows the same ride as a drawing.
 */
(function () {
  "use strict";

  var figure = document.getElementById("timeline");
  var packed = document.getElementById("seconds");
  if (!figure || !packed || typeof DecompressionStream === "undefined") {
    return;
  }
  var settings = JSON.parse(document.getElementById("settings").textContent);
  var live = figure.querySelector(".live");
  var panesBox = live.querySelector(".panes");
  var flagsBox = live.querySelector(".flags");
  var readout = live.querySelector(".readout");
  var spoken = live.querySelector("[aria-live]");
  var windowText = live.querySelector(".window");
  var meansText = live.querySelector(".means");
  var here = document.querySelector(".track .here");
  var units = settings.units; // what metres, metres per second and degrees Celsius are shown as
  var STATES = ["", "stopped, timer running", "paused, timer stopped", "missing, nothing recorded"];
  var RIDING = 0;
  var PAUSED = 2;
  var LEAST_WINDOW = 60; // seconds
  var WINDOW = 30; // seconds of the trailing mean in normalized power
  var LEAST_METRES = 100; // a grade over less says nothing
  var WHOLE = "Select a stretch to see its means.";
  var AXIS = 44; // pixels right of the plots, for the values

  var data = null; // channel by name, one value a second, null where nothing was measured
  var shown = {}; // the channels that are shown in another unit than they are kept in
  var along = null; // distance at each second, never falling, so that it can be an axis
  var seconds = []; // 0, 1, 2, …
  var last = settings.seconds - 1;
  var from = 0; // the window, in seconds
  var to = last;
  var byDistance = false;
  var cursor = null; // second under the cursor
  var lit = null; // number of the finding that is shown
  var plots = [];
  var quiet = false; // while this script itself moves the plots
  var sums = null; // running sums of the channels, from which the means of any stretch follow at once

  unpack().then(start, function (reason) {
    console.error("the timeline stays as drawn: " + reason);
  });

  /** Undoes PackedSeconds: base64, gzip, numbers of seven bits a byte, differences. */
  async function unpack() {
    var text = atob(packed.textContent.trim());
    var bytes = new Uint8Array(text.length);
    for (var i = 0; i < text.length; i++) {
      bytes[i] = text.charCodeAt(i);
    }
    var stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    var raw = new Uint8Array(await new Response(stream).arrayBuffer());
    var at = 0;
    var channels = {};
    settings.channels.forEach(function (channel) {
      var values = new Array(settings.seconds);
      var value = 0;
      for (var second = 0; second < settings.seconds; second++) {
        var code = raw[at] & 127;
        var factor = 128;
        while (raw[at++] & 128) {
          code += (raw[at] & 127) * factor;
          factor *= 128;
        }
        if (code === 0) {
          values[second] = null;
        } else {
          value += code % 2 ? (code - 1) / 2 : -code / 2;
          values[second] = value * channel.step;
        }
      }
      channels[channel.name] = values;
    });
    return channels;
  }

  function start(channels) {
    data = channels;
    for (var second = 0; second <= last; second++) {
      seconds.push(second);
    }
    if (data.distance) {
      var farthest = 0;
      along = data.distance.map(function (metres) {
        farthest = metres === null ? farthest : Math.max(farthest, metres);
        return toUnit(farthest, units.distance);
      });
    }
    sums = runningSums();
    shown = { altitude: inUnit(data.altitude, units.height), temperature: inUnit(data.temperature, units.temperature) };
    live.hidden = false;
    document.documentElement.classList.add("moving");
    makeFlags();
    makePanes();
    listen();
    show();
    requestAnimationFrame(function () {
      requestAnimationFrame(function () {
        performance.mark("timeline-drawn");
        document.documentElement.dataset.ready = "yes";
      });
    });
  }

  /** What is shown of a channel. */
  function values(name) {
    return shown[name] || data[name];
  }

  function inUnit(channel, unit) {
    return channel && channel.map(function (value) {
      return value === null ? null : toUnit(value, unit);
    });
  }

  function toUnit(value, unit) {
    return value / unit.size + unit.zero;
  }

  function colour(name) {
    return getComputedStyle(document.documentElement).getPropertyValue("--" + name).trim();
  }

  // ---- axes -----------------------------------------------------------------------------------------------------

  function axisValues() {
    return byDistance ? along : seconds;
  }

  function place(second) {
    var whole = Math.max(0, Math.min(last, Math.round(second)));
    return byDistance ? along[whole] : second;
  }

  /** The second at a place on the axis: the first that is as far. */
  function secondAt(position) {
    if (!byDistance) {
      return Math.max(0, Math.min(last, Math.round(position)));
    }
    var low = 0;
    var high = last;
    while (low < high) {
      var middle = (low + high) >> 1;
      if (along[middle] < position) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  function clock(second) {
    var whole = Math.round(second);
    return Math.floor(whole / 3600) + ":" + two(Math.floor(whole / 60) % 60) + ":" + two(whole % 60);
  }

  function two(number) {
    return (number < 10 ? "0" : "") + number;
  }

  // ---- panes ----------------------------------------------------------------------------------------------------

  function makePanes() {
    var panes = [
      { name: "power", title: "Power, mean of 30 s, W", colour: "power", height: 210 },
      { name: "heart", title: "Heart rate, bpm", colour: "heart", height: 100 },
      { name: "balance", title: "W\u2032 balance, kJ", colour: "balance", height: 100 },
      { name: "altitude", title: "Altitude, " + units.height.symbol, colour: "ground", height: 100, fill: "ground-fill" },
      { name: "temperature", title: "Temperature at the recorder, \u00B0" + units.temperature.symbol, colour: "guide", height: 70 }
    ].filter(function (pane) {
      return data[pane.name];
    });
    panes.forEach(function (pane, index) {
      var box = document.createElement("div");
      box.className = "pane";
      var title = document.createElement("h3");
      title.textContent = pane.title;
      box.append(title);
      panesBox.append(box);
      plots.push(new uPlot(options(pane, index === panes.length - 1), [axisValues(), values(pane.name)], box));
    });
    panesBox.querySelectorAll("canvas").forEach(function (canvas) {
      canvas.setAttribute("aria-hidden", "true");
    });
  }

  function options(pane, isLast) {
    var limits = bounds(pane);
    var line = {
      label: pane.title,
      stroke: function () { return colour(pane.colour); },
      width: 1.3,
      spanGaps: false,
      points: { show: false }
    };
    if (pane.fill) {
      line.fill = function () { return colour(pane.fill); };
      line.fillTo = function () { return limits[0]; }; // ground lies below the line below the sea, too
    }
    return {
      width: panesBox.clientWidth,
      height: pane.height + (isLast ? 30 : 0),
      padding: [20, 0, 4, 0],
      legend: { show: false },
      scales: {
        x: { time: false },
        y: { range: function () { return limits; } }
      },
      axes: [
        {
          show: isLast,
          size: 26,
          gap: 4,
          stroke: function () { return colour("quiet"); },
          grid: { show: false },
          ticks: { stroke: function () { return colour("line"); }, size: 4 },
          font: "12px " + colour("sans"),
          space: 64,
          incrs: byDistanceIncrements,
          values: function (plot, splits) {
            return splits.map(function (split) {
              if (plot.valToPos(split, "x") < 14) {
                return ""; // it would be cut off
              }
              return byDistance ? trim(split) + " " + units.distance.symbol : clockLabel(split, plot);
            });
          }
        },
        {
          side: 1,
          size: AXIS,
          gap: 6,
          stroke: function () { return colour("quiet"); },
          grid: { stroke: function () { return colour("line"); }, width: 1 },
          ticks: { show: false },
          font: "12px " + colour("sans"),
          space: pane.height > 150 ? 36 : 28
        }
      ],
      series: [{}, line],
      cursor: {
        sync: { key: "ride", scales: ["x", null], setSeries: false },
        drag: { x: true, y: false, setScale: false, dist: 6 },
        y: false,
        points: { size: 7, stroke: function () { return colour("ink"); } }
      },
      hooks: {
        drawClear: [function (plot) { background(plot, pane); }],
        draw: [function (plot) { foreground(plot, pane); }],
        setCursor: [function (plot) {
          if (!quiet && plot.cursor.idx !== undefined && plot.cursor.idx !== null && plot.cursor.left >= 0) {
            moveCursor(plot.cursor.idx, false);
          }
        }],
        setSelect: [function (plot) {
          if (!quiet && plot.select.width > 0) {
            var first = secondAt(plot.posToVal(plot.select.left, "x"));
            var end = secondAt(plot.posToVal(plot.select.left + plot.select.width, "x"));
            plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
            setWindow(first, end);
          }
        }],
        ready: [function (plot) {
          plot.over.addEventListener("dblclick", function (event) {
            event.stopImmediatePropagation();
            setWindow(0, last);
          }, true);
        }]
      }
    };
  }

  function byDistanceIncrements() {
    return byDistance
      ? [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100]
      : [10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 14400];
  }

  function clockLabel(second, plot) {
    var span = plot.scales.x.max - plot.scales.x.min;
    var text = clock(second);
    return span > 1200 ? text.slice(0, -3) : text;
  }

  function trim(number) {
    return String(Math.round(number * 10) / 10);
  }

  /** Fixed over the whole ride, so that a taller line is always a higher value. */
  function bounds(pane) {
    var low = Infinity;
    var high = -Infinity;
    values(pane.name).forEach(function (value) {
      if (value !== null) {
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    });
    if (pane.name === "power") {
      return [0, Math.max(high, settings.threshold || 0) * 1.05];
    }
    if (pane.name === "balance") {
      low = Math.min(low, 0);
    }
    var room = Math.max((high - low) * 0.06, 1);
    return [low - room, high + room];
  }

  /** Behind the line: what is lit, the sustainable band, and where nothing was ridden. */
  function background(plot, pane) {
    var ctx = plot.ctx;
    ctx.save();
    ctx.beginPath();
    ctx.rect(plot.bbox.left, plot.bbox.top, plot.bbox.width, plot.bbox.height);
    ctx.clip();
    settings.findings.forEach(function (finding) {
      if (finding.number === lit) {
        ctx.fillStyle = colour("lit");
        finding.parts.forEach(function (part) { stretch(plot, part[0], part[1]); });
      }
    });
    if (pane.name === "power" && settings.guide) {
      ctx.fillStyle = colour("guide-fill");
      var high = plot.valToPos(settings.guide[2], "y", true);
      ctx.fillRect(plot.bbox.left, high, plot.bbox.width, plot.valToPos(settings.guide[0], "y", true) - high);
    }
    stopsInSight().forEach(function (stop) {
      ctx.fillStyle = hatch(ctx, stop.state);
      stretch(plot, stop.from, stop.to);
    });
    ctx.restore();
  }

  /** What is only probable has a dashed outline. */
  function dashed(plot, fromSecond, toSecond, foot) {
    var left = plot.valToPos(place(fromSecond), "x", true);
    var right = plot.valToPos(place(Math.min(toSecond, last)), "x", true);
    plot.ctx.strokeStyle = colour("quiet");
    plot.ctx.lineWidth = devicePixelRatio;
    plot.ctx.setLineDash([5 * devicePixelRatio, 3 * devicePixelRatio]);
    plot.ctx.strokeRect(left, plot.bbox.top + plot.bbox.height - foot, right - left, foot - devicePixelRatio);
    plot.ctx.setLineDash([]);
  }

  function stretch(plot, fromSecond, toSecond, top, height) {
    var left = plot.valToPos(place(fromSecond), "x", true);
    var right = plot.valToPos(place(Math.min(toSecond, last)), "x", true);
    plot.ctx.fillRect(left, top === undefined ? plot.bbox.top : top, Math.max(right - left, 1.5 * devicePixelRatio),
      height === undefined ? plot.bbox.height : height);
  }

  /** Along the foot, before the ground: told bunches are full, proposed ones dashed. */
  function bunches(plot, pane) {
    var ctx = plot.ctx;
    if (pane.name === (data.altitude ? "altitude" : "power")) {
      ctx.save();
      ctx.beginPath();
      ctx.rect(plot.bbox.left, plot.bbox.top, plot.bbox.width, plot.bbox.height);
      ctx.clip();
      ctx.fillStyle = colour("quiet");
      var foot = 5 * devicePixelRatio;
      settings.bunches.forEach(function (bunch) {
        stretch(plot, bunch[0], bunch[1], plot.bbox.top + plot.bbox.height - foot, foot);
      });
      settings.proposedBunches.forEach(function (bunch) { dashed(plot, bunch[0], bunch[1], foot); });
      ctx.restore();
    }
  }

  /** Over the line: the levels to hold it against, and the edges of the lit finding. */
  function foreground(plot, pane) {
    bunches(plot, pane);
    var ctx = plot.ctx;
    ctx.save();
    if (pane.name === "power" && settings.guide) {
      level(plot, settings.guide[0], colour("guide"), [], 0.7);
      level(plot, settings.guide[1], colour("guide"), [7, 4], 1.5);
      level(plot, settings.guide[2], colour("guide"), [], 0.7);
    }
    if (pane.name === "power" && settings.threshold) {
      level(plot, settings.threshold, colour("threshold"), [2, 3], 1.5);
    }
    settings.findings.forEach(function (finding) {
      if (finding.number === lit) {
        ctx.strokeStyle = colour("ink");
        ctx.lineWidth = devicePixelRatio;
        ctx.setLineDash([]);
        [].concat.apply([], finding.parts).forEach(function (second) {
          var x = plot.valToPos(place(second), "x", true);
          if (x >= plot.bbox.left && x <= plot.bbox.left + plot.bbox.width) {
            ctx.beginPath();
            ctx.moveTo(x, plot.bbox.top);
            ctx.lineTo(x, plot.bbox.top + plot.bbox.height);
            ctx.stroke();
          }
        });
      }
    });
    ctx.restore();
  }

  function level(plot, value, stroke, dash, width) {
    var y = plot.valToPos(value, "y", true);
    plot.ctx.strokeStyle = stroke;
    plot.ctx.lineWidth = width * devicePixelRatio;
    plot.ctx.setLineDash(dash.map(function (length) { return length * devicePixelRatio; }));
    plot.ctx.beginPath();
    plot.ctx.moveTo(plot.bbox.left, y);
    plot.ctx.lineTo(plot.bbox.left + plot.bbox.width, y);
    plot.ctx.stroke();
  }

  var stops = null;

  function stopsInSight() {
    if (stops === null) {
      stops = [];
      for (var second = 0; second <= last; second++) {
        var state = data.state[second];
        var open = stops[stops.length - 1];
        if (state && open && open.state === state && open.to === second) {
          open.to = second + 1;
        } else if (state) {
          stops.push({ state: state, from: second, to: second + 1 });
        }
      }
    }
    return stops.filter(function (stop) {
      return stop.to >= from && stop.from <= to;
    });
  }

  var hatches = {};

  /** The same fillings as in the drawing: slanted lines, level lines, dots. */
  function hatch(ctx, state) {
    var key = state + colour("hatch") + devicePixelRatio;
    if (!hatches[key]) {
      var size = Math.round(6 * devicePixelRatio);
      var tile = document.createElement("canvas");
      tile.width = size;
      tile.height = size;
      var pen = tile.getContext("2d");
      pen.strokeStyle = colour("hatch");
      pen.fillStyle = colour("hatch");
      pen.lineWidth = 1.2 * devicePixelRatio;
      pen.beginPath();
      if (state === 1) {
        [-size, 0, size].forEach(function (shift) {
          pen.moveTo(shift - 1, size + 1);
          pen.lineTo(shift + size + 1, -1);
        });
        pen.stroke();
      } else if (state === 2) {
        pen.moveTo(0, size / 2);
        pen.lineTo(size, size / 2);
        pen.stroke();
      } else {
        pen.arc(size / 2, size / 2, 1.2 * devicePixelRatio, 0, 7);
        pen.fill();
      }
      hatches[key] = ctx.createPattern(tile, "repeat");
    }
    return hatches[key];
  }

  // ---- the window -----------------------------------------------------------------------------------------------

  function setWindow(first, end) {
    var length = Math.max(LEAST_WINDOW, Math.min(last, end - first));
    from = Math.max(0, Math.min(last - length, first + (end - first - length) / 2));
    to = Math.min(last, from + length);
    show();
    say(from <= 0 && to >= last ? "whole ride"
      : "from " + clock(from) + " to " + clock(to) + ". " + meansText.textContent);
  }

  function zoom(factor, around) {
    var length = Math.max(LEAST_WINDOW, Math.min(last, (to - from) * factor));
    var share = (around - from) / (to - from);
    var first = Math.max(0, Math.min(last - length, around - share * length));
    setWindow(first, first + length);
  }

  function shift(share) {
    var length = to - from;
    var first = Math.max(0, Math.min(last - length, from + share * length));
    setWindow(first, first + length);
  }

  function show() {
    var low = place(from);
    var high = place(to);
    if (!(high > low)) {
      high = low + (byDistance ? 0.001 : 1);
    }
    quiet = true;
    plots.forEach(function (plot) {
      plot.setScale("x", { min: low, max: high });
    });
    quiet = false;
    placeFlags(low, high);
    var isWhole = from <= 0 && to >= last;
    windowText.textContent = isWhole ? "" : clock(from) + " to " + clock(to);
    meansText.textContent = isWhole ? WHOLE : means();
  }

  // ---- the means of what is shown -------------------------------------------------------------------------------

  /** At each second the sum and the count of a channel's values before it; paused seconds do not count. */
  function runningSums() {
    function sum(values) {
      var totals = new Float64Array(settings.seconds + 1);
      var counts = new Int32Array(settings.seconds + 1);
      for (var second = 0; second <= last; second++) {
        var value = values[second];
        var counted = value !== null && data.state[second] !== PAUSED;
        totals[second + 1] = totals[second] + (counted ? value : 0);
        counts[second + 1] = counts[second] + (counted ? 1 : 0);
      }
      return { totals: totals, counts: counts };
    }
    return {
      watts: data.watts && sum(data.watts),
      fourthPowers: data.watts && fourthPowers(),
      heart: data.heart && sum(data.heart),
      temperature: data.temperature && sum(data.temperature),
      moving: sum(data.state.map(function (state) { return state === RIDING ? 1 : 0; }))
    };
  }

  /** Running sums of the fourth powers of the trailing means of 30 s; the window runs on across what has no power. */
  function fourthPowers() {
    var before = [0];
    data.watts.forEach(function (value, second) {
      if (value !== null && data.state[second] !== PAUSED) {
        before.push(before[before.length - 1] + value);
      }
    });
    var totals = new Float64Array(before.length);
    for (var each = 1; each < before.length; each++) {
      var watts = each < WINDOW ? 0 : (before[each] - before[each - WINDOW]) / WINDOW;
      totals[each] = totals[each - 1] + watts * watts * watts * watts;
    }
    return totals;
  }

  /** Of the windows that lie within the stretch; null where none does. */
  function normalized(first, end) {
    var begin = sums.watts ? sums.watts.counts[first] + WINDOW - 1 : 0;
    var windows = sums.watts ? sums.watts.counts[end] - begin : 0;
    return windows > 0
      ? Math.sqrt(Math.sqrt((sums.fourthPowers[begin + windows] - sums.fourthPowers[begin]) / windows)) : null;
  }

  function mean(sum, first, end) {
    var count = sum && first < end ? sum.counts[end] - sum.counts[first] : 0;
    return count > 0 ? (sum.totals[end] - sum.totals[first]) / count : null;
  }

  function firstMeasured(values, first, end, step) {
    for (var second = first; second !== end; second += step) {
      if (values[second] !== null) {
        return second;
      }
    }
    return null;
  }

  /** How far a channel went between its first and its last reading in the stretch, or null. */
  function difference(values, first, end) {
    var begin = values ? firstMeasured(values, first, end, 1) : null;
    return begin === null ? null : values[firstMeasured(values, end - 1, first - 1, -1)] - values[begin];
  }

  /** As in the table of loads: power and heart rate over the timer seconds, speed over the moving ones. */
  function means() {
    var first = Math.round(from);
    var end = Math.round(to) >= last ? settings.seconds : Math.round(to);
    var metres = difference(data.distance, first, end);
    var climbed = difference(data.altitude, first, end);
    var moving = sums.moving.totals[end] - sums.moving.totals[first];
    var parts = [
      said(mean(sums.watts, first, end), 0, " W"),
      said(normalized(first, end), 0, " W normalized"),
      said(mean(sums.heart, first, end), 0, " bpm"),
      inUnits(metres, 1, units.distance, ""),
      inUnits(metres === null || moving === 0 ? null : metres / moving, 1, units.speed, " moving"),
      said(metres === null || metres < LEAST_METRES || climbed === null ? null : climbed / metres * 100, 1, " % grade"),
      inUnits(mean(sums.temperature, first, end), 0, units.temperature, "")
    ];
    return "Means of " + clock(end - first) + ": " + parts.filter(Boolean).join("  \u00B7  ");
  }

  function inUnits(value, decimals, unit, after) {
    return value === null ? "" : said(toUnit(value, unit), decimals, " " + (unit === units.temperature ? "\u00B0" : "") + unit.symbol + after);
  }

  function said(value, decimals, unit) {
    return value === null ? "" : value.toFixed(decimals).replace(/^-(0(?:\.0*)?)$/, "$1") + unit;
  }

  function switchAxis(toDistance) {
    byDistance = toDistance;
    quiet = true;
    plots.forEach(function (plot) {
      plot.setData([axisValues(), plot.data[1]], false);
    });
    quiet = false;
    show();
    say("axis of " + (toDistance ? "distance" : "time"));
  }

  function say(words) {
    spoken.textContent = words;
  }

  // ---- the cursor -----------------------------------------------------------------------------------------------

  function moveCursor(second, byKey) {
    cursor = second;
    var parts = [clock(second)];
    if (along) {
      parts.push(units.place + " " + along[second].toFixed(1));
    }
    add(parts, "power", 0, " W");
    add(parts, "heart", 0, " bpm");
    add(parts, "balance", 1, " kJ of W\u2032");
    add(parts, "altitude", 0, " " + units.height.symbol);
    add(parts, "temperature", 0, " \u00B0" + units.temperature.symbol);
    if (data.state[second]) {
      parts.push(STATES[data.state[second]]);
    }
    readout.textContent = parts.join("  \u00B7  ");
    if (here && data.across && data.across[second] !== null) {
      here.setAttribute("cx", data.across[second]);
      here.setAttribute("cy", data.down[second]);
    }
    if (byKey) {
      quiet = true;
      plots.forEach(function (plot) {
        plot.setCursor({ left: plot.valToPos(place(second), "x"), top: plot.over.clientHeight / 2 }, false);
      });
      quiet = false;
      say(parts.join(", "));
    }
  }

  function add(parts, name, decimals, unit) {
    if (data[name]) {
      var value = values(name)[cursor];
      parts.push(value === null ? "no " + ({ power: "power", heart: "heart rate", altitude: "altitude" }[name] || name)
        : value.toFixed(decimals) + unit);
    }
  }

  // ---- marks and rows -------------------------------------------------------------------------------------------

  function makeFlags() {
    var lanes = [];
    settings.findings.forEach(function (finding) {
      while (lanes.length <= finding.lane) {
        var lane = document.createElement("div");
        lane.className = "lane";
        flagsBox.append(lane);
        lanes.push(lane);
      }
      var row = document.getElementById("finding-" + finding.number);
      var chip = row.querySelector(".chip");
      var flag = document.createElement("button");
      flag.type = "button";
      flag.className = chip.className.replace("chip", "flag");
      flag.dataset.flag = finding.number;
      flag.setAttribute("aria-label", "Finding " + finding.number + ", " + row.querySelector(".title").textContent
        + ", from " + clock(finding.from) + " to " + clock(finding.to) + ": go to its row");
      var number = document.createElement("span");
      number.className = chip.className;
      number.textContent = finding.number;
      flag.append(number);
      flag.classList.toggle("in-parts", finding.parts.length > 1);
      lanes[finding.lane].append(flag);
      finding.parts.forEach(function () {
        var part = document.createElement("span");
        part.className = "part";
        part.dataset.part = finding.number;
        part.hidden = finding.parts.length < 2;
        lanes[finding.lane].append(part);
      });
    });
  }

  function placeFlags(low, high) {
    settings.findings.forEach(function (finding) {
      var flag = flagsBox.querySelector("[data-flag='" + finding.number + "']");
      var left = (place(finding.from) - low) / (high - low);
      var right = (place(Math.min(finding.to, last)) - low) / (high - low);
      flag.hidden = right < 0 || left > 1;
      left = Math.max(0, Math.min(0.97, left));
      flag.style.left = left * 100 + "%";
      flag.style.width = Math.max(0, Math.min(1, right) - left) * 100 + "%";
      if (finding.parts.length > 1) {
        flagsBox.querySelectorAll("[data-part='" + finding.number + "']").forEach(function (element, index) {
          placePart(element, finding.parts[index], low, high);
        });
      }
    });
  }

  /** One stop of several: where it was, and wide enough to be seen. */
  function placePart(element, part, low, high) {
    var left = (place(part[0]) - low) / (high - low);
    var right = (place(Math.min(part[1], last)) - low) / (high - low);
    element.hidden = right < 0 || left > 1;
    left = Math.max(0, left);
    element.style.left = left * 100 + "%";
    element.style.width = Math.max(0, Math.min(1, right) - left) * 100 + "%";
  }

  function light(number) {
    if (number === lit) {
      return;
    }
    lit = number;
    document.querySelectorAll("[data-finding], [data-flag]").forEach(function (element) {
      var own = Number(element.dataset.finding || element.dataset.flag);
      element.classList.toggle("lit", own === number);
    });
    plots.forEach(function (plot) {
      plot.redraw(false);
    });
  }

  function showFinding(number) {
    settings.findings.forEach(function (finding) {
      if (finding.number === number) {
        var room = Math.max(120, (finding.to - finding.from) * 0.15);
        setWindow(Math.max(0, finding.from - room), Math.min(last, finding.to + room));
        light(number);
      }
    });
  }

  function calm() {
    return matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth";
  }

  // ---- what the reader does --------------------------------------------------------------------------------------

  function listen() {
    var chosen = null; // stays lit after the pointer has left

    function numberOf(target) {
      var element = target.closest && target.closest("[data-finding], [data-flag]");
      return element ? Number(element.dataset.finding || element.dataset.flag) : null;
    }
    ["mouseover", "focusin"].forEach(function (kind) {
      document.addEventListener(kind, function (event) {
        var number = numberOf(event.target);
        light(number === null ? chosen : number);
      });
    });
    document.addEventListener("click", function (event) {
      var flag = event.target.closest("[data-flag]");
      var chip = event.target.closest("[data-show]");
      var link = event.target.closest("[data-to]");
      if (flag || link) {
        event.preventDefault();
        chosen = Number(flag ? flag.dataset.flag : link.dataset.to);
        light(chosen);
        var row = document.getElementById("finding-" + chosen);
        row.focus({ preventScroll: true });
        row.scrollIntoView({ block: "center", behavior: calm() });
      } else if (chip) {
        event.preventDefault();
        chosen = Number(chip.dataset.show);
        showFinding(chosen);
        flagsBox.querySelector("[data-flag='" + chosen + "']").focus({ preventScroll: true });
        figure.scrollIntoView({ block: "start", behavior: calm() });
      }
    });
    live.querySelectorAll("[data-do]").forEach(function (button) {
      button.addEventListener("click", function () { act(button.dataset.do); });
    });
    live.querySelectorAll("[name=axis]").forEach(function (radio) {
      radio.addEventListener("change", function () { switchAxis(radio.value === "distance" && radio.checked); });
    });
    panesBox.addEventListener("keydown", function (event) {
      var step = Math.max(1, Math.round((to - from) / 200));
      var known = true;
      if (event.key === "+" || event.key === "=") {
        act("in");
      } else if (event.key === "-") {
        act("out");
      } else if (event.key === "Escape") {
        act("whole");
      } else if (event.key === "ArrowLeft" || event.key === "ArrowRight") {
        var sign = event.key === "ArrowLeft" ? -1 : 1;
        if (event.shiftKey) {
          shift(sign * 0.25);
        } else {
          var now = cursor === null || cursor < from || cursor > to ? (from + to) / 2 : cursor;
          moveCursor(Math.round(Math.max(from, Math.min(to, now + sign * step))), true);
        }
      } else {
        known = false;
      }
      if (known) {
        event.preventDefault();
      }
    });
    // A pinch on a touch pad comes as a wheel with control held; a plain wheel goes on scrolling the page.
    panesBox.addEventListener("wheel", function (event) {
      if (event.ctrlKey) {
        event.preventDefault();
        zoom(Math.exp(event.deltaY * 0.01), secondUnder(event.clientX));
      } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        shift(event.deltaX / panesBox.clientWidth);
      }
    }, { passive: false });
    touches();
    addEventListener("resize", resize);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", function () {
      plots.forEach(function (plot) { plot.redraw(false, true); });
    });
  }

  function act(what) {
    var middle = cursor !== null && cursor > from && cursor < to ? cursor : (from + to) / 2;
    if (what === "in") {
      zoom(0.5, middle);
    } else if (what === "out") {
      zoom(2, middle);
    } else if (what === "left") {
      shift(-0.5);
    } else if (what === "right") {
      shift(0.5);
    } else {
      setWindow(0, last);
    }
  }

  function secondUnder(clientX) {
    var box = plots[0].over.getBoundingClientRect();
    return secondAt(plots[0].posToVal(clientX - box.left, "x"));
  }

  /** One finger along the chart moves the window, two zoom it. */
  function touches() {
    var fingers = new Map();
    panesBox.addEventListener("pointerdown", function (event) {
      if (event.pointerType === "touch") {
        fingers.set(event.pointerId, event.clientX);
      }
    });
    panesBox.addEventListener("pointermove", function (event) {
      if (!fingers.has(event.pointerId)) {
        return;
      }
      var before = Array.from(fingers.values());
      var moved = event.clientX - fingers.get(event.pointerId);
      fingers.set(event.pointerId, event.clientX);
      var now = Array.from(fingers.values());
      if (fingers.size === 1) {
        shift(-moved / panesBox.clientWidth);
      } else if (fingers.size === 2) {
        var wide = Math.max(20, Math.abs(now[0] - now[1]));
        zoom(Math.max(20, Math.abs(before[0] - before[1])) / wide, secondUnder((now[0] + now[1]) / 2));
      }
    });
    ["pointerup", "pointercancel"].forEach(function (kind) {
      panesBox.addEventListener(kind, function (event) { fingers.delete(event.pointerId); });
    });
  }

  function resize() {
    plots.forEach(function (plot) {
      plot.setSize({ width: panesBox.clientWidth, height: plot.height });
    });
    show();
  }
})();
