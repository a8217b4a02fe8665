/** The part of @lhncbc/ucum-lhc that the checks use; the package brings no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  interface UcumUtils {
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
    convertUnitTo(
      from: string,
      value: number,
      to: string,
    ): { readonly status: 'succeeded' | 'failed' | 'error'; readonly toVal: number | null };
  }
  const ucum: { readonly UcumLhcUtils: { getInstance(): UcumUtils } };
  export default ucum;
}
