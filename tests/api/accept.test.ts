import { describe, expect, it } from "vitest";
import { chooseType } from "../../src/api/accept.js";

const offered = ["application/json", "text/csv", "text/html"];

describe("choosing the form of the answer", () => {
  // RFC 9110, section 12.5.1: precedence by how exact a range is, quality from 0 to 1, absent means 1.
  it.each([
    { accept: undefined, chosen: "application/json", because: "no header means anything will do" },
    { accept: "", chosen: "application/json", because: "an empty header says nothing" },
    { accept: "*/*", chosen: "application/json", because: "ties go to our preference" },
    { accept: "text/*", chosen: "text/csv", because: "a range of one kind" },
    { accept: "text/html, text/csv", chosen: "text/csv", because: "equal wishes: our preference" },
    { accept: "text/html, text/csv;q=0.9", chosen: "text/html", because: "the larger quality" },
    { accept: "text/html;level=1, */*;q=0.1", chosen: "text/html", because: "parameters do not matter here" },
    { accept: "TEXT/HTML", chosen: "text/html", because: "types have no case" },
    { accept: "application/json;q=0, */*", chosen: "text/csv", because: "the exact range forbids JSON" },
    { accept: "text/csv;q=0.2, text/*;q=0.8", chosen: "text/html", because: "the exact range decides for CSV" },
    {
      accept: "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8",
      chosen: "text/html",
      because: "what browsers send",
    },
    { accept: "image/png", chosen: undefined, because: "nothing fits" },
    { accept: "application/json;q=0", chosen: undefined, because: "zero is never" },
    { accept: "nonsense", chosen: undefined, because: "it cannot be read" },
    { accept: "text/csv;q=2, text/html", chosen: "text/html", because: "2 is no quality" },
  ])("$accept chooses $chosen: $because", ({ accept, chosen }) => {
    expect(chooseType(accept, offered)).toBe(chosen);
  });
});
