// Stands in for node:child_process in the bundle: Commander imports it at once, does not need it here, and it costs time.
export default {};
