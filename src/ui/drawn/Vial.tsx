import { Container, type ContainerProps, type Pieces } from './Container';

interface VialProps extends ContainerProps {
  /** How it is closed; a screw cap where it is not said. */
  cap?: 'screw' | 'dropper';
}

/** Clear glass with a pale cap: a dilution, a trial. Its label leaves a strip of glass open, so that the level is always in sight. */
export function Vial({ cap = 'screw', ...props }: VialProps) {
  return <Container {...props} sort="vial" pieces={cap === 'dropper' ? withDropper : withScrew} />;
}

/** Dark glass with a black cap: what was bought neat. */
export function Bottle(props: ContainerProps) {
  return <Container {...props} sort="bottle" pieces={bottle} />;
}

const vialGlass = 'M33 38V46C33 55 8 53 8 72V179a13 13 0 0 0 13 13H91a13 13 0 0 0 13-13V72C104 53 79 55 79 46V38Z';

const withScrew: Pieces = {
  glass: vialGlass,
  liquid: { left: 8, right: 104, bottom: 192, full: 68, corner: 13 },
  cap: <path d="M31 8H81a5 5 0 0 1 5 5V33a5 5 0 0 1-5 5H31a5 5 0 0 1-5-5V13a5 5 0 0 1 5-5Z" />,
  ridges: 'M36 17V29M46 17V29M56 17V29M66 17V29M76 17V29',
  label: { left: 8, top: 84, width: 77, height: 66 },
};

const withDropper: Pieces = {
  ...withScrew,
  cap: (
    <>
      <path class="rubber" d="M47 26V15a9 9 0 0 1 18 0V26Z" />
      <path d="M33 24H79a5 5 0 0 1 5 5V33a5 5 0 0 1-5 5H33a5 5 0 0 1-5-5V29a5 5 0 0 1 5-5Z" />
    </>
  ),
  ridges: 'M40 28.5V33.5M51 28.5V33.5M61 28.5V33.5M72 28.5V33.5',
  pipette: 'M53 38V168l3 8 3-8V38',
};

const bottle: Pieces = {
  glass: 'M45 34V52C45 64 11 66 11 94V178a14 14 0 0 0 14 14H87a14 14 0 0 0 14-14V94C101 66 67 64 67 52V34Z',
  liquid: { left: 11, right: 101, bottom: 192, full: 86, corner: 14 },
  cap: <path d="M41 8H71a4 4 0 0 1 4 4V33a3 3 0 0 1-3 3H40a3 3 0 0 1-3-3V12a4 4 0 0 1 4-4Z" />,
  ridges: 'M47 15V30M56 15V30M65 15V30',
  label: { left: 11, top: 92, width: 72, height: 60 },
};
