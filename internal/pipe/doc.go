// Package pipe gives the friction and heat transfer of liquids in small tubes,
// straight and coiled.
//
// It works in plain numbers: Reynolds numbers, ratios of lengths, Darcy
// friction factors. A caller checks its own ranges; a function here returns
// NaN for an argument that is NaN or negative and says where its correlation
// holds.
//
// # Nomenclature
//
//	Re    Reynolds number, ρ V d / μ
//	d     bore of the tube
//	D     mean diameter of the winding of a coil
//	e     height of the roughness of the wall
//	f     Darcy friction factor; Δp = f (L/d) ρ V²/2, four times the Fanning factor
//	De    Dean number, Re √(d/D)
//
// # Validity of the friction factors
//
//	straight   laminar below Re 2100; turbulent from 3100 to 1e8, e/d to 0.05;
//	           within 3 % of measured smooth tubes from Re 3200 to 20000, which
//	           covers beer lines; from 2100 to 3100 a tube may carry either kind
//	           of flow (see [Transition])
//	coiled     D/d from 5 to 200; within 5 % of a trade table of coils at d/D
//	           0.07 to 0.11
//
// # Sources of the friction factors
//
//	[1] S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91.
//	[2] C. M. White, Proc. R. Soc. London A 123 (1929) 645.
//	[3] H. Ito, J. Basic Eng. 81 (1959) 123.
//	[4] E. F. Schmidt, Chem. Ing. Tech. 39 (1967) 781.
//	[5] B. J. McKeon, C. J. Swanson, M. V. Zagarola, R. J. Donnelly, A. J. Smits,
//	    J. Fluid Mech. 511 (2004) 41: measurements, for the check only.
package pipe
