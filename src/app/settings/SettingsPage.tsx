import { changeSettings, shelf } from '../../records/shelf';
import { Later } from '../../ui/controls/Later';
import { Choice } from '../nav/Choice';
import { go } from '../nav/route';
import { PageHead } from '../nav/PageHead';

const devicePart = async () => (await import('./DevicePart')).DevicePart;
const handsBusy = async () => (await import('./HandsBusy')).HandsBusy;
const scalePart = async () => (await import('./ScalePart')).ScalePart;
const rooms = [10, 15, 18, 20, 22, 25, 30, 35];
const bases = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];

/** How the person likes Minim. */
export function SettingsPage() {
  return (
    <main class="page settings">
      <PageHead title="Settings" />
      <Choices />
      <Later load={devicePart} props={{}} />
      <Later load={handsBusy} props={{}} />
      <Later load={scalePart} props={{}} />
      <div class="list">
        <button class="entry" onClick={() => go(['keeping'])}>
          <b>What is kept, and where</b>
          <span>Backup, restore, erase</span>
        </button>
        <button class="entry" onClick={() => go(['devices'])}>
          <b>Two devices</b>
          <span>The same on phone, tablet and laptop</span>
        </button>
      </div>
      <p class="quiet">
        Everything stays on this phone: no account, no tracking, no request to any other place. Minim warns and
        computes; it does not certify. Local rules and licensed practice decide.
      </p>
    </main>
  );
}

/** What is offered, with what was chosen or typed elsewhere. */
function roomsWith(roomC: number): number[] {
  return [...new Set([...rooms, roomC])].sort((a, b) => a - b);
}

/** Each choice is stored at once. */
function Choices() {
  const { theme, hand, basis, roomC = 20, jurisdiction = 'EU' } = shelf.settings.value;
  return (
    <>
      <Choice
        title="Which hand holds the phone"
        value={hand}
        options={{ right: 'Right', left: 'Left' }}
        onChoose={(hand) => changeSettings({ hand })}
      />
      <Choice
        title="Light"
        value={theme}
        options={{ system: 'As the phone', light: 'Paper (light)', dark: 'Night (dark)' }}
        onChoose={(theme) => changeSettings({ theme })}
      />
      <Choice
        title="The room is usually at"
        value={String(roomC)}
        options={Object.fromEntries(roomsWith(roomC).map((t) => [`${t}`, `${t} °C`]))}
        onChoose={(t) => changeSettings({ roomC: Number(t) })}
      />
      <Choice
        title="Strengths are usually in"
        value={basis}
        options={Object.fromEntries(bases.map((name) => [name, name]))}
        onChoose={(basis) => changeSettings({ basis })}
      />
      <Choice
        title="Drinks are held to the rules of"
        value={jurisdiction}
        options={{ EU: 'the EU', US: 'the US' }}
        onChoose={(jurisdiction) => changeSettings({ jurisdiction })}
      />
    </>
  );
}
