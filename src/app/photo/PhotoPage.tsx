import { useSignal } from '@preact/signals';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Photo } from '../../records/kind/photo';
import { photosOf } from '../../records/photos';
import { forget } from '../../records/shelf';
import { formatMoment } from '../../ui/format';
import { sizeWords } from '../nav/keepingWords';
import { back, route } from '../nav/route';
import { photoAlt } from './photoWords';
import { Picture } from './Picture';
import { PageHead } from '../nav/PageHead';
import './photos.css';

/** One photo, large: #/record/<id>/photo/<id of the photo>. */
export function PhotoPage({ record }: { record: AnyRecord }) {
  const photo = photosOf(record.id).find(({ id }) => id === route.value[3]);
  return (
    <main class="page photo-page">
      <PageHead title={photo ? photoAlt(record, photo) : 'Photo'} />
      {photo ? <Large record={record} photo={photo} /> : <p class="quiet">This photo was removed.</p>}
    </main>
  );
}

function Large({ record, photo }: { record: AnyRecord; photo: Photo }) {
  return (
    <>
      <Picture photo={photo} alt={photoAlt(record, photo)} />
      <p class="quiet">
        {formatMoment(photo.taken)} · {sizeWords(photo.bytes)}
      </p>
      <Remove photo={photo} />
    </>
  );
}

/** Removes it, after one question. */
function Remove({ photo }: { photo: Photo }) {
  const state = useSignal<'' | 'asked' | 'busy'>('');
  const trouble = useSignal('');
  const remove = async () => {
    state.value = 'busy';
    try {
      await forget([photo.id]);
      back();
    } catch (error) {
      trouble.value = `It could not be removed: ${error instanceof Error ? error.message : String(error)}`;
      state.value = '';
    }
  };
  const words =
    state.value === '' ? trouble.value : 'It goes from both copies, and from your other devices when they hear of it.';
  return (
    <footer class="actions">
      {words && (
        <p class="trouble" role="alert">
          {words}
        </p>
      )}
      {state.value === '' ? (
        <button class="second" onClick={() => (state.value = 'asked')}>
          Remove this photo
        </button>
      ) : (
        <div class="row">
          <button class="second" disabled={state.value === 'busy'} onClick={() => void remove()}>
            Remove it
          </button>
          <button class="main" disabled={state.value === 'busy'} onClick={() => (state.value = '')}>
            Keep it
          </button>
        </div>
      )}
    </footer>
  );
}
