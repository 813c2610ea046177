/**
 * A second program for droplets and densities, by other ways: the speed from a balance of forces stepped through time, the match from
 * volumes that are poured together gram by gram until the mixture no longer floats. SI units inside; mm a day and g/g outside.
 */

/** Speed at which a sphere ends up (upwards above 0), mm a day: weight, lift and drag, stepped until it no longer changes. */
export function speedByForces(d: { diameterUm: number; oil: number; drink: number; viscosityMPaS: number }): number {
  const radius = d.diameterUm * 0.5e-6;
  const volume = (4 / 3) * Math.PI * radius ** 3;
  const mass = volume * d.oil * 1000;
  const lift = volume * (d.drink - d.oil) * 1000 * 9.80665;
  const drag = 6 * Math.PI * d.viscosityMPaS * 1e-3 * radius; // N per m/s
  const step = (0.1 * mass) / drag; // a tenth of the time in which it speeds up
  let speed = 0;
  for (let i = 0; i < 400; i++) speed += (step * (lift - drag * speed)) / mass;
  return speed * 86_400 * 1000;
}

/** Agent per gram of oil phase at which a mixture of volumes has the density of the drink, by halving. Densities g/mL. */
export function shareByPouring(oil: number, agent: number, drink: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 100; i++) {
    const share = (low + high) / 2;
    const floats = 1 / ((1 - share) / oil + share / agent) < drink;
    if (floats) low = share;
    else high = share;
  }
  return high;
}
