/** Line of the plan for a cause of a complaint. */
export function complaintLine(complaint: string, cause: string): string {
  return `complaint:${complaint}:${cause}`;
}

/** Line of the plan for an item of the inspection. */
export function itemLine(item: string): string {
  return `item:${item}`;
}

/** Line added by hand; `id` is unique in the visit. */
export function addedLine(id: string): string {
  return `line:${id}`;
}

/** Whether a line belongs to a complaint, which has its own events for what is done and proven. */
export function isComplaintLine(line: string): boolean {
  return line.startsWith('complaint:');
}

/** Whether a line was added by hand. */
export function isAddedLine(line: string): boolean {
  return line.startsWith('line:');
}
