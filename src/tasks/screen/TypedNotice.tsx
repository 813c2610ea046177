import { useEffect, useRef } from 'preact/hooks';
import { lineNotice } from '../../ui/device/typingScale';
import { useTypedLines } from './typedLines';
import type { Walk } from '../engine/task';
import './typedNotice.css';

/** Hears typed lines, and says what was made of the last one until the step after next; its button goes back to the step that it belongs to. */
export function TypedNotice({ walk }: { walk: Walk }) {
  useTypedLines(walk);
  const notice = lineNotice.value;
  const { key } = walk.step.value;
  const came = useRef({ notice, at: key, later: new Set<string>() });
  if (came.current.notice !== notice) came.current = { notice, at: key, later: new Set() };
  const { at, later } = came.current;
  if (key !== at) later.add(key);
  useEffect(() => {
    if (later.size > 1) lineNotice.value = null;
  }, [key]);
  const press = async () => {
    lineNotice.value = null;
    await notice?.button?.does();
    if (walk.step.peek().key !== at) await walk.goTo(at);
  };
  return (
    <div class="typed-notice" role="status">
      {notice && (
        <>
          <p>{notice.words}</p>
          {notice.button && (
            <button class="second" onClick={() => void press()}>
              {notice.button.words}
            </button>
          )}
        </>
      )}
    </div>
  );
}
