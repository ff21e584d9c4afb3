import { asRead } from "../../../shared/units/decimalMark.ts";
import { type Piece, parseEquation } from "./parseEquation.ts";

function Row({ pieces }: { readonly pieces: readonly Piece[] }) {
  return (
    <mrow>
      {pieces.map((piece, i) => (
        <One key={i} piece={piece} />
      ))}
    </mrow>
  );
}

function Scripted({ piece }: { readonly piece: Extract<Piece, { kind: "script" }> }) {
  const base = <One piece={piece.base} />;
  const sub = <mtext>{piece.sub}</mtext>;
  const sup = <Row pieces={piece.sup} />;
  if (piece.sup.length === 0)
    return (
      <msub>
        {base}
        {sub}
      </msub>
    );
  if (piece.sub === "")
    return (
      <msup>
        {base}
        {sup}
      </msup>
    );
  return (
    <msubsup>
      {base}
      {sub}
      {sup}
    </msubsup>
  );
}

const FUNCTIONS = ["sin", "cos", "tan", "ln", "log"];

function Applied({ name }: { readonly name: string }) {
  return (
    <>
      <mi>{name}</mi>
      <mspace width="0.17em" />
    </>
  );
}

function One({ piece }: { readonly piece: Piece }) {
  switch (piece.kind) {
    case "number":
      return <mn>{asRead(piece.text)}</mn>;
    case "name":
      return FUNCTIONS.includes(piece.text) ? <Applied name={piece.text} /> : <mi>{piece.text}</mi>;
    case "sign":
      return <mo>{piece.text === "·" ? "\u22c5" : piece.text}</mo>;
    case "words":
      return <mtext>{piece.text}</mtext>;
    case "script":
      return <Scripted piece={piece} />;
    case "root":
      return (
        <msqrt>
          <Row pieces={piece.of} />
        </msqrt>
      );
    case "fraction":
      return (
        <mfrac>
          <Row pieces={piece.over} />
          <Row pieces={piece.under} />
        </mfrac>
      );
    case "group":
      return (
        <mrow>
          <mo>{piece.open}</mo>
          <Row pieces={piece.of} />
          <mo>{piece.close}</mo>
        </mrow>
      );
  }
}

/** An equation as MathML, a line a clause. */
export function Equation({ text }: { readonly text: string }) {
  return (
    <div class="working-equation">
      {parseEquation(text).map((pieces, i) => (
        <math key={i} display="block">
          <Row pieces={pieces} />
        </math>
      ))}
    </div>
  );
}
