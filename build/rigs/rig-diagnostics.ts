export { rigDiagnostics } from "./gear-checks.ts";
