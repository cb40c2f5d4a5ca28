// Readings that an engine of this kind might show, for the command that is suggested next.

import type { Engine } from "@sealtrend/core";

/** Middle of what makers state [psi]; common practice. Where the ignition is not known, those of a spark engine. */
const usual: Readonly<Record<Engine["ignition"], number>> = { spark: 150, compression: 400, unknown: 150 };

/** `--dry "150 149 148 147" --unit psi` */
export const exampleDry = ({ ignition, cylinders }: Pick<Engine, "ignition" | "cylinders">): string =>
  `--dry "${cylinders.map((_, i) => String(usual[ignition] - i)).join(" ")}" --unit psi`;
