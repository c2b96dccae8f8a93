import { HostError, type HostFault } from '../../shared/host/host-api.ts';

/** What the user is told about a mistake of the program; the details go to the report, not to the window. */
const MACHINE_SIDE: HostFault = {
  code: 'machine-side',
  message:
    'The machine side met something it did not expect. What is on disk is unharmed. Close the window and open the visit again.',
};

/** Any failure as every carrier sends it: the host's own refusals as they are, everything else as `machine-side`. */
export function faultOf(problem: unknown): HostFault {
  return problem instanceof HostError ? { code: problem.code, message: problem.message } : MACHINE_SIDE;
}

/** Any failure as a line for the report: with its stack where there is one. */
export function reportOf(problem: unknown): string {
  return problem instanceof Error ? (problem.stack ?? problem.message) : String(problem);
}
