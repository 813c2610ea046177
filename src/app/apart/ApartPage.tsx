import { kindWords } from '../../records/kind/kinds';
import { shelf } from '../../records/shelf';
import { isApart } from '../../records/union/apart';
import { describe } from '../describe/describe';
import { Part } from '../fault/Part';
import { PageHead } from '../nav/PageHead';
import { go } from '../nav/route';
import { ChooseSides } from './ChooseSides';

/** All that two devices gave differently, thing by thing: #/apart. */
export function ApartPage() {
  const all = [...shelf.records.value.values()].filter(isApart);
  return (
    <main class="page">
      <PageHead title="Different on two devices" />
      {all.length === 0 && <p role="status">Nothing to choose: your devices agree.</p>}
      {all.map((record) => {
        const { title, code } = describe(record);
        return (
          <Part of={record} key={record.id}>
            <section class="apart-thing">
              <h2>
                <bdi>{[code, title].filter(Boolean).join(' ')}</bdi>
              </h2>
              <button class="second" onClick={() => go(['record', record.id])}>
                Open this {kindWords(record).toLowerCase()}
              </button>
              <ChooseSides record={record} />
            </section>
          </Part>
        );
      })}
    </main>
  );
}
