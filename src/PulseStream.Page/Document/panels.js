const byId = id => document.getElementById(id);
const clockTime = ms => new Date(ms).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });

const levels = {
  'usual': ['○', 'In the usual range'],
  'recheck': ['↻', 'Measure again'],
  'call': ['☎', 'Call today'],
  'doctor-now': ['!', 'Doctor now'],
  'emergency': ['!!', 'Emergency'],
};

// Says a text only when it has changed: a screen reader would speak it again otherwise.
function say(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

function makeRing(ring) {
  const drawing = ring.querySelector('svg');
  let parts = [];

  // Petals around the count; the outline shows how many are still to come.
  function build(count) {
    const step = 2 * Math.PI / count;
    const at = (radius, angle) => `${50 + radius * Math.sin(angle)} ${50 - radius * Math.cos(angle)}`;
    parts = [];
    drawing.replaceChildren();
    for (let i = 0; i < count; i++) {
      const from = i * step + 0.06;
      const to = (i + 1) * step - 0.06;
      const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
      path.setAttribute('d', `M ${at(34, from)} L ${at(47, from)} A 47 47 0 0 1 ${at(47, to)} L ${at(34, to)} A 34 34 0 0 0 ${at(34, from)} Z`);
      parts.push(path);
      drawing.append(path);
    }
    ring.setAttribute('aria-valuemax', count);
    say(byId('needed'), String(count));
  }

  function fill(count) {
    parts.forEach((part, i) => part.classList.toggle('full', i < count));
    if (ring.getAttribute('aria-valuenow') !== String(count)) {
      ring.setAttribute('aria-valuenow', count);
      say(byId('held'), String(count));
    }
  }

  build(5);
  return { build, fill };
}

function showAdvice(told) {
  const [mark, words] = levels[told.level];
  byId('advice').dataset.level = told.level;
  say(byId('level-mark'), mark);
  say(byId('level'), words);
  const end = told.text.indexOf('. ') + 1;
  say(byId('action'), end > 0 ? told.text.slice(0, end) : told.text);
  say(byId('why'), end > 0 ? told.text.slice(end + 1) : '');
}

function showDue(told, now) {
  const due = byId('due');
  due.hidden = !told || told.recheckAfterMinutes === null || told.recheckAfterMinutes === 0;
  if (due.hidden) {
    return;
  }
  const whole = told.recheckAfterMinutes * 60;
  // The page's clock may still be short of the moment of the advice.
  const seconds = Math.min(whole, Math.ceil(whole + (told.atUnixMs - now) / 1000));
  const two = number => String(number).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  say(byId('due-word'), seconds > 0 ? 'Measure again in' : 'Measure again:');
  say(byId('countdown'), seconds > 0
    ? `${hours > 0 ? hours + ':' : ''}${hours > 0 ? two(Math.floor(seconds / 60) % 60) : Math.floor(seconds / 60)}:${two(seconds % 60)}`
    : 'it is time now');
}

function emptyHistory() {
  const item = document.createElement('li');
  item.className = 'empty';
  item.textContent = 'Nothing accepted yet.';
  byId('past-readings').replaceChildren(item);
}

function addToHistory(words, when) {
  const list = byId('past-readings');
  list.querySelector('.empty')?.remove();
  const item = document.createElement('li');
  item.textContent = `${clockTime(when)}  ${words}`;
  list.prepend(item);
}

function sittingWords(told) {
  const pulse = told.pulse === null ? '' : `, pulse ${told.pulse}`;
  if (told.outcome === 'accepted') {
    return `Finger off after ${told.seconds} s. Reading of record: ${told.spo2} %${pulse}.`;
  }
  return told.outcome === 'unsettled'
    ? `Finger off after ${told.seconds} s. Unsettled: measure for a full minute again.`
    : `Finger off after ${told.seconds} s. No reading of oxygen${pulse}.`;
}

async function listSessions() {
  const answer = await fetch('sessions');
  const sessions = answer.ok ? await answer.json() : [];
  if (sessions.length > 0) {
    byId('sessions').replaceChildren(...sessions.map(sessionItem));
  }
}

function sessionItem(session) {
  const item = document.createElement('li');
  const button = document.createElement('button');
  const title = document.createElement('b');
  const detail = document.createElement('span');
  title.textContent = session.start === null ? session.name : new Date(session.start).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
  detail.textContent = `${session.person ?? 'no person told'}, ${session.seconds} s, readings accepted: ${session.readings}. Show or hide its picture.`;
  button.type = 'button';
  button.setAttribute('aria-expanded', 'false');
  button.append(title, detail);
  button.addEventListener('click', () => {
    const shown = item.querySelector('img');
    if (shown) {
      shown.remove();
    } else {
      const picture = document.createElement('img');
      picture.alt = `Pulse wave, oxygen, pulse and condition of the session ${session.name}`;
      picture.src = 'picture?key=' + encodeURIComponent(session.key);
      item.append(picture);
    }
    button.setAttribute('aria-expanded', String(!shown));
  });
  item.append(button);
  return item;
}
