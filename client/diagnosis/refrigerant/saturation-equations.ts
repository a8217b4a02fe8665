/**
 * Saturation pressure equations by fluid: p = p_r · exp((T_r/T) · Σ n_i (1 − T/T_r)^t_i), T in kelvin (ITS-90), p in
 * pascal absolute. Coefficients are facts; each keeps its source. `bubble` serves subcooling, `dew` superheat.
 */
export interface SaturationEquation {
  readonly n: readonly number[];
  readonly t: readonly number[];
  /** Kelvin and pascal. */
  readonly reducingTemperature: number;
  readonly reducingPressure: number;
  readonly lowestTemperature: number;
  readonly highestTemperature: number;
  readonly source: string;
}

export const SATURATION_EQUATIONS = {
  'R-22': {
    pure: {
      n: [
        -7.2670371701641265, 1.2860929616388512, -0.10790119794275199, -0.989473291657183, -2.9393096353041623,
        0.488431917326884,
      ],
      t: [0.999, 1.272, 1.692, 2.74, 4.539, 15.876],
      reducingTemperature: 369.295,
      reducingPressure: 4990000.0,
      lowestTemperature: 115.73000000000002,
      highestTemperature: 369.2949999999993,
      source:
        'Ancillary fitted by CoolProp to the EOS of: A. Kamei, S.W. Beyerlein, R.T Jacobsen, Application of Nonlinear Regression in the Development of a Wide Range Formulation for HCFC-22, Int. J. Thermophys. 16(5):1155-1164 (1995), doi:10.1007/BF02081283; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R22.json; I.H. Bell, J. Wronski, S. Quoilin, V. Lemort, Ind. Eng. Chem. Res. 53(6):2498-2508 (2014), doi:10.1021/ie4033999',
    },
  },
  'R-32': {
    pure: {
      n: [
        0.019194334673139708, -6.794802163795212, 9.276391392786632, -12.327153852761946, 28.46579606476374,
        -28.570870718190093,
      ],
      t: [0.531, 0.979, 2.203, 2.382, 3.421, 3.558],
      reducingTemperature: 351.255,
      reducingPressure: 5782000.0,
      lowestTemperature: 136.34,
      highestTemperature: 351.2549999999992,
      source:
        'Ancillary fitted by CoolProp to the EOS of: R. Tillner-Roth, A. Yokozeki, An international standard equation of state for difluoromethane (R-32), J. Phys. Chem. Ref. Data 26(6):1273-1328 (1997), doi:10.1063/1.556002; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R32.json; I.H. Bell, J. Wronski, S. Quoilin, V. Lemort, Ind. Eng. Chem. Res. 53(6):2498-2508 (2014), doi:10.1021/ie4033999',
    },
  },
  'R-134a': {
    pure: {
      n: [
        0.4331478287291047, -9.090302559074352, 2.1476074125217703, -1.557687007603464, -3.5020328972698604,
        14.958442337201044,
      ],
      t: [0.845, 0.99, 1.14, 2.651, 4.507, 17.235],
      reducingTemperature: 374.21,
      reducingPressure: 4059280.0,
      lowestTemperature: 169.85,
      highestTemperature: 374.20999999999935,
      source:
        'Ancillary fitted by CoolProp to the EOS of: R. Tillner-Roth, H.D. Baehr, An International Standard Formulation for ... HFC-134a, J. Phys. Chem. Ref. Data 23:657-729 (1994), doi:10.1063/1.555958; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R134a.json; I.H. Bell, J. Wronski, S. Quoilin, V. Lemort, Ind. Eng. Chem. Res. 53(6):2498-2508 (2014), doi:10.1021/ie4033999',
    },
  },
  'R-290': {
    pure: {
      n: [
        -23.998635747391152, 18.313017605233238, -0.42240851966839504, -2.7378298813798962, 0.257888414168987,
        -1.3113462226130785,
      ],
      t: [1.05, 1.084, 2.259, 4.287, 7.66, 18.584],
      reducingTemperature: 369.89,
      reducingPressure: 4251200.0,
      lowestTemperature: 85.52500000000002,
      highestTemperature: 369.8899999999991,
      source:
        'Ancillary fitted by CoolProp to the EOS of: E.W. Lemmon, M.O. McLinden, W. Wagner, Thermodynamic Properties of Propane. III, J. Chem. Eng. Data 54:3141-3180 (2009), doi:10.1021/je900217v; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/n-Propane.json; I.H. Bell, J. Wronski, S. Quoilin, V. Lemort, Ind. Eng. Chem. Res. 53(6):2498-2508 (2014), doi:10.1021/ie4033999',
    },
  },
  'R-404A': {
    bubble: {
      n: [0.061067, -6.5646, -3.6162, -3.9771],
      t: [0.54, 0.965, 3.7, 9.0],
      reducingTemperature: 345.27,
      reducingPressure: 3734800.0,
      lowestTemperature: 200.0,
      highestTemperature: 345.27,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R404A.json',
    },
    dew: {
      n: [-0.00026863, -6.5757, -4.1802, -7.9102],
      t: [0.1, 0.972, 3.8, 9.0],
      reducingTemperature: 345.27,
      reducingPressure: 3734800.0,
      lowestTemperature: 200.0,
      highestTemperature: 345.27,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R404A.json',
    },
  },
  'R-407C': {
    bubble: {
      n: [0.48722, -6.6959, -1.4165, -2.5109],
      t: [0.54, 0.925, 2.7, 4.7],
      reducingTemperature: 359.345,
      reducingPressure: 4631700.0,
      lowestTemperature: 200.0,
      highestTemperature: 359.345,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R407C.json',
    },
    dew: {
      n: [-0.086077, -6.6364, -2.4648, -3.4776],
      t: [0.4, 0.965, 3.1, 5.0],
      reducingTemperature: 359.345,
      reducingPressure: 4631700.0,
      lowestTemperature: 200.0,
      highestTemperature: 359.345,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R407C.json',
    },
  },
  'R-410A': {
    bubble: {
      n: [-7.2818, 2.5093, -3.2695, -2.8022],
      t: [1.0, 1.8, 2.4, 4.9],
      reducingTemperature: 344.494,
      reducingPressure: 4901200.0,
      lowestTemperature: 200.0,
      highestTemperature: 344.494,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R410A.json',
    },
    dew: {
      n: [-7.4411, 1.9883, -2.4925, -3.2633],
      t: [1.0, 1.6, 2.4, 5.0],
      reducingTemperature: 344.494,
      reducingPressure: 4901200.0,
      lowestTemperature: 200.0,
      highestTemperature: 344.494,
      source:
        'Published ancillary (part of the pseudo-pure model): E.W. Lemmon, Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A, R-507A, and R-407C, Int. J. Thermophys. 24(4):991-1006 (2003), doi:10.1023/A:1025048800563; coefficients as distributed in CoolProp 8.0.0 (MIT licence), dev/fluids/R410A.json',
    },
  },
  'R-454B': {
    bubble: {
      n: [-7.09943559, 0.9212706954, -1.885309692, -2.298803263],
      t: [1.0, 1.5, 3.0, 5.0],
      reducingTemperature: 351.0,
      reducingPressure: 5275274.247901686,
      lowestTemperature: 222.039,
      highestTemperature: 342.039,
      source:
        'Fitted for this project: least-squares fit (T_r, p_r are fit parameters, not the critical point) to CoolProp 8.0.0 HEOS mixture R454B.mix; model: I.H. Bell, J. Phys. Chem. Ref. Data 52(1):013101 (2023), doi:10.1063/5.0135368; R-32 EOS Tillner-Roth & Yokozeki 1997 doi:10.1063/1.556002; R-1234yf EOS Lemmon & Akasaka, Int. J. Thermophys. 43:119 (2022), doi:10.1007/s10765-022-03015-y',
    },
    dew: {
      n: [-8.036327212, 2.06054557, -1.590923004, -3.884650198],
      t: [1.0, 1.3, 2.5, 5.0],
      reducingTemperature: 350.5,
      reducingPressure: 5169589.133675231,
      lowestTemperature: 222.039,
      highestTemperature: 342.039,
      source:
        'Fitted for this project: least-squares fit (T_r, p_r are fit parameters, not the critical point) to CoolProp 8.0.0 HEOS mixture R454B.mix; model: I.H. Bell, J. Phys. Chem. Ref. Data 52(1):013101 (2023), doi:10.1063/5.0135368; R-32 EOS Tillner-Roth & Yokozeki 1997 doi:10.1063/1.556002; R-1234yf EOS Lemmon & Akasaka, Int. J. Thermophys. 43:119 (2022), doi:10.1007/s10765-022-03015-y',
    },
  },
} as const satisfies Record<
  string,
  { pure: SaturationEquation } | { bubble: SaturationEquation; dew: SaturationEquation }
>;
