// The two models stripped to what they must compute: equations written out, tables in typed arrays, nothing checked. The
// bases that the library is measured against.

const R = 287.05;
const air = 101_325;

/** Peak pressure [Pa abs] of one cranking stroke: variable gamma, Hohenberg, leak, 1 degree a step to 20 degrees after
 *  top dead centre. The tables are made in every run, since the sizes may change from run to run.
 *  @param e - SI numbers: bore, stroke, rod, ratio, closes [deg], speed [rpm], leak [m2], wall, start [K], hose [m3] */
export const bareCycle = ({ bore, stroke, rod, ratio, closes, speed, leak, wall, start, hose }) => {
  const degree = Math.PI / 180;
  const from = closes - 180;
  const steps = Math.ceil(20 - from);
  const step = (20 - from) / steps;
  const half = step / 2;
  const piston = (Math.PI / 4) * bore * bore;
  const crank = stroke / 2;
  const clearance = (piston * stroke) / (ratio - 1) + hose;
  const points = 2 * steps + 1;
  const volume = new Float64Array(points);
  const swelling = new Float64Array(points);
  const cooling = new Float64Array(points);
  const turning = 6 * speed;
  const pistonSpeed = (2 * stroke * speed) / 60;
  const scale = (130 * (pistonSpeed + 1.4) ** 0.8) / turning;
  for (let i = 0; i < points; i++) {
    const theta = (from + i * half) * degree;
    const sine = Math.sin(theta);
    const cosine = Math.cos(theta);
    const shank = Math.sqrt(rod * rod - crank * crank * sine * sine);
    const travel = crank * (1 - cosine) + rod - shank;
    const v = clearance + piston * travel;
    volume[i] = v;
    swelling[i] = piston * crank * sine * (1 + (crank * cosine) / shank) * degree;
    cooling[i] = scale * v ** -0.06 * (2 * piston + Math.PI * bore * travel);
  }
  const gas = (air * volume[0]) / start;
  const through = leak / turning;
  const trace = new Float64Array(steps + 1);
  let mass = 1;
  let kelvins = start;
  let dm = 0;
  let dT = 0;
  let pressure = air;
  const rates = (i, m, T) => {
    const p = (m * gas * T) / volume[i];
    const cp = 3.653 + T * (-1.337e-3 + T * (3.294e-6 + T * (-1.913e-9 + T * 0.2763e-12)));
    const g = cp / (cp - 1);
    const critical = Math.exp((g / (g - 1)) * Math.log(2 / (g + 1)));
    const r = Math.max(air / p, critical);
    const lnR = Math.log(Math.min(r, 1));
    const psi = Math.sqrt(((2 * g) / (g - 1)) * (Math.exp((2 / g) * lnR) - Math.exp(((g + 1) / g) * lnR)));
    const carried = through * p * psi * Math.sqrt(R * T);
    const heat = cooling[i] * Math.exp(0.8 * Math.log(p * 1e-5) - 0.4 * Math.log(T)) * (wall - T);
    dm = -carried / (gas * T);
    dT = ((heat - carried - p * swelling[i]) * (g - 1)) / (m * gas);
    pressure = p;
  };
  for (let i = 0; i <= steps; i++) {
    const at = 2 * i;
    rates(at, mass, kelvins);
    trace[i] = pressure;
    if (i === steps) break;
    const m1 = dm;
    const t1 = dT;
    rates(at + 1, mass + half * m1, kelvins + half * t1);
    const m2 = dm;
    const t2 = dT;
    rates(at + 1, mass + half * m2, kelvins + half * t2);
    const m3 = dm;
    const t3 = dT;
    rates(at + 2, mass + step * m3, kelvins + step * t3);
    mass += (step / 6) * (m1 + 2 * (m2 + m3) + dm);
    kelvins += (step / 6) * (t1 + 2 * (t2 + t3) + dT);
  }
  let top = 0;
  for (let i = 1; i <= steps; i++) if (trace[i] > trace[top]) top = i;
  const [before, peak, after] = [trace[top - 1], trace[top], trace[top + 1]];
  return peak + (after - before) ** 2 / (8 * (2 * peak - before - after));
};

const critical = (2 / 2.4) ** 3.5;
const choked = Math.sqrt(1.4) * (2 / 2.4) ** 3;
const flow = (r) => (r <= critical ? choked : Math.sqrt(7 * (r ** (2 / 1.4) - r ** (2.4 / 1.4))));

/** Leak over restrictor from three absolute pressures: before the restrictor, in the cylinder, outside. */
export const bareAlpha = (p1, p2, pa) => (p1 * flow(p2 / p1)) / (p2 * flow(pa / p2));
