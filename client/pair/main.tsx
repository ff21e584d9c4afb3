import { render } from "preact";
import { startTheme } from "../app/theme.ts";
import { forgetEntries } from "../state/kept/database.ts";
import { PairPage } from "./PairPage.tsx";

const root = document.getElementById("app");
if (!root) throw new Error("The page has no #app to draw into.");

/** What the QR code's address carries behind its #: it never leaves the device but in the form. */
const code = location.hash.slice(1);
if (code !== "") history.replaceState(null, "", location.pathname);

// Read again by a camera, the address differs in this alone, and the page stays as it is.
addEventListener("hashchange", () => location.reload());

// Whoever is led here is not paired, or no longer: the book that was kept goes. What was saved and waits stays.
forgetEntries();
startTheme();
const name = matchMedia("(pointer: coarse)").matches ? "Phone" : "Laptop";
render(<PairPage code={code} name={name} onPaired={() => location.replace("/bench")} />, root);
