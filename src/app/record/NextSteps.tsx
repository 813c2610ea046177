import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { useTask } from '../nav/loaded';
import { doNext } from './doNext';
import { nextsOf } from './nexts';

/** One green next step and two or three others. */
export function NextSteps({ record, smellOnly }: { record: AnyRecord; smellOnly: boolean }) {
  const task = useTask(isOf('run', record) ? record.task : undefined);
  const [main, ...others] = nextsOf(record, smellOnly, task);
  if (!main) return null;
  return (
    <footer class="actions nexts">
      {others.length > 0 && (
        <div class="others">
          {others.map((next) => (
            <button class="second" onClick={() => doNext(next)}>
              {next.words}
            </button>
          ))}
        </div>
      )}
      <button class="main" onClick={() => doNext(main)}>
        {main.words}
      </button>
    </footer>
  );
}
