import { calendarText, type CalendarEntry } from '../../core/text/calendar';
import { useFault } from '../../ui/fault/useFault';
import { shareOrSave } from '../nav/saveFile';

/** Hands what is due to the calendar of the phone, which rings while Minim is closed. */
export function CalendarButton({ entries }: { entries: () => Promise<readonly CalendarEntry[]> }) {
  const fault = useFault();
  async function hand() {
    const text = calendarText(await entries(), Date.now());
    await shareOrSave([new File([text], 'Due in Minim.ics', { type: 'text/calendar' })]);
  }
  return (
    <button class="second" onClick={() => void hand().catch(fault)}>
      Put in the calendar, with alarms
    </button>
  );
}
