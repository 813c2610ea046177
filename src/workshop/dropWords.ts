/** '1 drop', '12 drops'. */
export function dropsText(drops: number): string {
  return drops === 1 ? '1 drop' : `${drops} drops`;
}

/** What stands behind a count: 'of 4 drops'; past the target '2 too many: 4 wanted'. */
export function ofTarget(count: number, target: number): string {
  return count > target ? `${count - target} too many: ${target} wanted` : `of ${dropsText(target)}`;
}
