/** A repeatable stream of numbers in [0, 1) for tests that play something out. */
export { randomFrom as seeded } from '../../src/core/number/randomFrom';
