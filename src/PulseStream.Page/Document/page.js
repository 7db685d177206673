(function () {
  const blankAfterMs = 2000;
  const wave = makeWave(byId('wave'));
  const ring = makeRing(byId('ring'));
  const links = {
    waiting: ['Waiting', 'Waiting for the first signal of the instrument.'],
    receiving: ['Receiving', ''],
    silent: ['Silent', 'Nothing arrives: check the cable.'],
    lost: ['Lost', 'The instrument is gone: plug it in again, and the session goes on.'],
    ended: ['Ended', 'The measurement has ended.'],
  };
  let link = 'waiting';
  let lastToldAt = -Infinity;
  let second = null;
  let advice = null;
  let clockOffsetMs = 0;
  let person = { pseudonym: null, isRight: null };
  let isOpen = false;
  let sinceSitting = false;

  function isLive() {
    return isOpen && link === 'receiving' && performance.now() - lastToldAt < blankAfterMs;
  }

  function helpLine() {
    if (person.isRight === false) {
      return 'Take the clip off. This session is kept for someone else: end it and start one for this person.';
    }
    if (!isOpen) {
      return 'No connection to the program. Numbers are hidden until it is back.';
    }
    if (link !== 'receiving') {
      return links[link][1];
    }
    return isLive() ? second?.line ?? 'Stay as you are: the signal is settling.' : 'Nothing arrives: check the cable.';
  }

  function show() {
    const believed = isLive() && second?.usable === true && person.isRight !== false;
    byId('now').classList.toggle('blank', !believed);
    say(byId('spo2'), believed && second.spo2 !== null ? String(second.spo2) : '– –');
    say(byId('pulse'), believed && second.pulse !== null ? String(second.pulse) : '– –');
    ring.fill(believed ? second.steady : 0);
    say(byId('help'), helpLine());
    const [word] = links[link];
    say(byId('link'), isOpen ? word : 'No connection');
    byId('link').dataset.bad = String(!isLive());
    byId('wave').setAttribute('aria-label', isLive()
      ? believed ? 'Pulse wave, moving, believed' : 'Pulse wave, moving, not believed'
      : 'Pulse wave, standing still');
    document.body.classList.toggle('wrong', person.isRight === false);
    showDue(advice, Date.now() + clockOffsetMs);
  }

  const takes = {
    hello(told) {
      clockOffsetMs = told.nowUnixMs - Date.now();
      byId('before').hidden = !told.hasArchive;
      if (told.hasArchive) {
        listSessions();
      }
      second = null;
      wave.reset();
      emptyHistory();
      sinceSitting = false;
      isOpen = true;
    },
    session(told) {
      say(byId('source'), `${told.source === '-' ? 'standard input' : told.source}, ${told.sampleRateHz} Hz${told.speed === 1 ? '' : `, played ${told.speed} times as fast`}`);
      wave.scale(told.sampleRateHz, told.speed);
      ring.build(told.heldSeconds);
    },
    link(told) { link = told.state; },
    unkept() { byId('unkept').hidden = false; },
    person(told) {
      person = told;
      say(byId('person'), told.pseudonym === null ? 'No pseudonym was told: nobody can find these readings again.' : `This session is kept for: ${told.pseudonym}`);
      document.querySelectorAll('[data-person]').forEach(button =>
        button.setAttribute('aria-pressed', String(String(told.isRight) === button.dataset.person)));
      byId('clean').classList.toggle('due', sinceSitting && told.isRight === null);
    },
    feeling(told) {
      byId('unanswered').hidden = told.feeling !== 'not-asked';
      document.querySelectorAll('[data-feeling]').forEach(button =>
        button.setAttribute('aria-pressed', String(told.feeling === button.dataset.feeling)));
    },
    wave(told) {
      lastToldAt = performance.now();
      wave.take(told);
    },
    second(told) {
      lastToldAt = performance.now();
      second = told;
      wave.believe(told.usable);
    },
    reading(told) {
      const pulse = told.pulse === null ? '' : `, pulse ${told.pulse}`;
      const words = document.createElement('small');
      words.textContent = `accepted at ${clockTime(told.atUnixMs)}; the signal allows ${told.spo2Low.toFixed(1)} to ${told.spo2High.toFixed(1)} %`;
      byId('accepted').replaceChildren(`${told.spo2} %${pulse}`, words);
      addToHistory(`Accepted: ${told.spo2} %${pulse}`, told.atUnixMs);
    },
    sitting(told) {
      sinceSitting = true;
      byId('clean').classList.toggle('due', person.isRight === null);
      addToHistory(sittingWords(told), told.atUnixMs);
    },
    advice(told) {
      advice = told;
      showAdvice(told);
    },
  };

  function send(where, answer) {
    fetch(where, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(answer) })
      .catch(() => say(byId('help'), 'The answer did not reach the program. Press again.'));
  }

  document.querySelectorAll('[data-feeling]').forEach(button => button.addEventListener('click', () =>
    send('feeling', { feeling: button.getAttribute('aria-pressed') === 'true' ? 'not-asked' : button.dataset.feeling })));
  document.querySelectorAll('[data-person]').forEach(button => button.addEventListener('click', () =>
    send('person', { isRight: button.dataset.person === 'true' })));
  byId('look').addEventListener('click', listSessions);

  const events = new EventSource('events');
  events.addEventListener('error', () => {
    isOpen = false;
    show();
  });
  for (const [name, take] of Object.entries(takes)) {
    events.addEventListener(name, told => {
      take(JSON.parse(told.data));
      if (name !== 'wave') {
        show();
      }
    });
  }
  emptyHistory();
  setInterval(show, 100);
  show();
})();
