/** '1 drop', '12 drops'. */
export function dropsText(drops: number): string {
  return drops === 1 ? '1 drop' : `${drops} drops`;
}

/** What stands behind a count: 'of 4 drops'; past the wish '2 too many: 4 wanted'. */
export function ofWish(count: number, wish: number): string {
  return count > wish ? `${count - wish} too many: ${wish} wanted` : `of ${dropsText(wish)}`;
}
