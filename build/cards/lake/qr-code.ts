import QRCode from "qrcode";

/** Light modules that ISO/IEC 18004 asks for on every side of a symbol. */
export const QUIET_MODULES = 4;

/** A QR symbol as path data of black squares. */
export interface QrSymbol {
  /** Modules along a side, without the quiet zone. */
  readonly modules: number;
  pathAt(x_pt: number, y_pt: number, module_pt: number): string;
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Level M survives about 15 % of damage: mud, a crease. */
export function qrSymbol(text: string): QrSymbol {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: "M" });
  const { size } = modules;
  const dark = Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_, column) => modules.get(row, column) !== 0),
  );
  return {
    modules: size,
    pathAt: (x_pt, y_pt, module_pt) =>
      dark
        .flatMap((cells, row) =>
          cells.flatMap((isDark, column) => {
            if (!isDark || cells[column - 1] === true) return [];
            const end = cells.indexOf(false, column);
            const length = (end < 0 ? size : end) - column;
            const [left, right] = [column, column + length].map((i) => hundredth(x_pt + i * module_pt));
            const [top, bottom] = [row, row + 1].map((i) => hundredth(y_pt + i * module_pt));
            return [`M${left} ${top}H${right}V${bottom}H${left}Z`];
          }),
        )
        .join(""),
  };
}
