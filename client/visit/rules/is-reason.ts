/** Words that only say that it is to go on. */
const NO_REASON = new Set(
  'note notes the a an that this it is was so and or to of for in on my i we you me all same anyway anyhow any regardless just because cause reason reasons finish finished close closed done end visit go going ahead yes yeah yep ok okay sure right fine please now do keep kept leave override overridden continue no none nothing not um uh er erm hm hmm mm mhm huh well like uhm ah oh'.split(
    ' ',
  ),
);

/** Whether what was spoken is a reason: words that say more than "go on". */
export function isReason(text: string): boolean {
  const words = text.toLowerCase().match(/[\p{L}\p{N}']+/gu) ?? [];
  return words.some((word) => word.length > 1 && !NO_REASON.has(word));
}
