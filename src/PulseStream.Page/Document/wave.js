'use strict';

// Draws the last seconds of the pulse wave: a thick line where it was believed, a thin dotted one where it was not.
function makeWave(canvas) {
  const shownSeconds = 8;
  const leastLateSeconds = 0.12;
  const mostLateSeconds = 0.5;
  // Every second frame of most screens: 30 pictures a second, for half the work.
  const leastFrameMs = 20;
  let points = [];
  let rate = 100;
  let speed = 1;
  let head = 0;
  let usable = false;
  let lastFrame = performance.now();
  let lastTake = lastFrame;
  let lateSeconds = leastLateSeconds;
  let drawn = '';

  // Where much comes at once and seldom, the wave is drawn later, so that it does not stand still meanwhile.
  function settleLateness() {
    const now = performance.now();
    const pause = Math.min((now - lastTake) / 1000, mostLateSeconds);
    lastTake = now;
    lateSeconds = Math.max(leastLateSeconds, 1.2 * pause, lateSeconds * 0.995);
  }

  function take(told) {
    settleLateness();
    const heights = told.heights;
    for (let i = 0; i < heights.length; i++) {
      points.push({ index: told.index + i * told.stride, height: heights[i], usable, gap: told.stride });
    }
    const oldest = points.length ? points[points.length - 1].index - shownSeconds * rate * 1.3 : 0;
    while (points.length && points[0].index < oldest) {
      points.shift();
    }
  }

  // The right edge moves by the clock, a breath behind the newest point, so that uneven arrival does not jerk the wave.
  function moveHead(now) {
    const newest = points.length ? points[points.length - 1].index : 0;
    head += (now - lastFrame) / 1000 * rate * speed;
    lastFrame = now;
    const wanted = newest - lateSeconds * rate * speed;
    head = Math.abs(wanted - head) > rate * speed * 0.6 ? wanted : head + (wanted - head) * 0.05;
    head = Math.min(head, newest);
  }

  function bounds(from) {
    let low = Infinity;
    let high = -Infinity;
    for (const point of points) {
      if (point.index >= from && point.height !== null) {
        low = Math.min(low, point.height);
        high = Math.max(high, point.height);
      }
    }
    const middle = (low + high) / 2;
    const half = Math.max((high - low) / 2, 0.1);
    return Number.isFinite(middle) ? [middle - half, middle + half] : [-1, 1];
  }

  function draw(now) {
    requestAnimationFrame(draw);
    if (now - lastFrame < leastFrameMs) {
      return;
    }
    const dots = Math.min(devicePixelRatio || 1, 2);
    const width = Math.round(canvas.clientWidth * dots);
    const height = Math.round(canvas.clientHeight * dots);
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
    }
    moveHead(now);
    const colour = getComputedStyle(canvas).color;
    const picture = [head, width, height, colour].join();
    if (picture === drawn) {
      return;
    }
    drawn = picture;
    const pen = canvas.getContext('2d');
    pen.clearRect(0, 0, width, height);
    const span = shownSeconds * rate;
    const from = head - span;
    const [low, high] = bounds(from);
    const margin = 14 * dots;
    const x = index => (index - from) / span * width;
    const y = value => height - margin - (value - low) / (high - low) * (height - 2 * margin);
    pen.strokeStyle = colour;
    pen.lineJoin = 'round';
    // Each stroke begins at the last point of the one before: no seams between the parts.
    let last = null;
    for (let i = 0; i < points.length;) {
      const kind = points[i].usable;
      pen.beginPath();
      pen.lineWidth = (kind ? 4 : 2) * dots;
      pen.setLineDash(kind ? [] : [3 * dots, 5 * dots]);
      if (last) {
        pen.moveTo(x(last.index), y(last.height));
      }
      for (; i < points.length && points[i].usable === kind; i++) {
        const point = points[i];
        if (point.height === null || point.index < from || point.index > head) {
          last = null;
        } else {
          if (last && point.index - last.index <= point.gap * 2) {
            pen.lineTo(x(point.index), y(point.height));
          } else {
            pen.moveTo(x(point.index), y(point.height));
          }
          last = point;
        }
      }
      pen.stroke();
    }
  }

  requestAnimationFrame(draw);
  return {
    take,
    reset() { points = []; head = 0; },
    scale(hz, times) { rate = hz; speed = times; },
    believe(isUsable) { usable = isUsable; },
  };
}
