// Stands in for node:child_process in the bundle. carcase starts no other program, and loading the real one costs time.
export default {};
