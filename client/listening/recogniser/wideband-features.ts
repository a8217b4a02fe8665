/**
 * What the 16 kHz model (CMU Sphinx's en-us, BSD-2) was trained on, as the recogniser reads it (`feat_params.json`). The
 * model's own files have the same in another form, `feat.params`.
 */
export const WIDEBAND_FEATURES = {
  lowerf: 130,
  upperf: 6800,
  nfilt: 25,
  transform: 'dct',
  lifter: 22,
  feat: '1s_c_d_dd',
  svspec: '0-12/13-25/26-38',
  cmn: 'current',
  varnorm: false,
};
