import { describe, expect, it } from "vitest";
import { cellsOf, demo, estimated, takenOff } from "./helpers/posting.js";

describe("takeoffs", () => {
  it("need the structure alone", async () => {
    const { cutList, geometry, coverings, fasteners, finish, needs, cautions } = await takenOff({
      structure: { kind: "gable", span: "18 ft", length: "20 ft", slope: { rise: "8 in", run: "12 in" } },
    });
    // NAVEDTRA 14044: 8 in of rise, 14.42 in a foot; 9 ft of run, 129.8 in, which is 10 ft 9 3/4 in.
    if (geometry?.kind !== "gable") throw new Error("no gable");
    expect(geometry.rafter.unitLength.value).toBe("14.4222");
    expect(geometry.rafter.lineLength.marked).toBe(`10' 9 13/16"`);
    expect(cutList.groups.map(({ name }) => name)).toContain("rafters");
    expect(cutList.groups.every(({ route, weight }) => route === null && weight !== null)).toBe(true);
    expect([coverings.length, (fasteners?.lines.length ?? 0) > 5, finish.kind]).toEqual([1, true, "oil-stain"]);
    expect(needs.every(({ quantity }) => Number(quantity.value) > 0)).toBe(true);
    expect(cautions[0]?.code).toBe("not-checked");
  });

  it("are the very cells of the estimate of the same request", async () => {
    const request = demo("orchard-shelter");
    const [taken, whole] = [await takenOff(request, "?include=sheet"), await estimated(request, "?include=sheet")];
    const cells = cellsOf(whole);
    const common = [...cellsOf(taken).values()];
    expect(common.length).toBeGreaterThan(500);
    const other = common.filter(
      ({ name, value, unit }) => cells.get(name)?.value !== value || cells.get(name)?.unit !== unit,
    );
    // Each route has its own finish, and hardware that fits its posts: what is bought comes dressed, and smaller.
    const own = other.filter(({ name }) => /^(finish|fasteners\.order)\./.test(name));
    expect(other.filter((cell) => !own.includes(cell))).toEqual([]);
    const ways = ["bought", "milled", "mixed"];
    for (const { name, unit } of own)
      expect(ways.flatMap((way) => cells.get(`${way}.${name}`)?.unit ?? [])).toContain(unit);
    expect(taken.geometry).toEqual(whole.geometry);
    expect(taken.fasteners).toEqual(whole.fasteners);
    expect(taken.about).toEqual(whole.about);
  });

  it("protect fasteners as their exposure asks, group by group, and those of the covering against rain at least", async () => {
    const structure = { kind: "gable", span: "16 ft", length: "24 ft", groups: { posts: { exposure: "salt" } } };
    const classes = async (exposure: string | undefined) => {
      const { fasteners, needs, notices, cautions } = await takenOff({ structure: { ...structure, exposure } });
      const at = (name: string) => fasteners?.lines.find((line) => line.name === name);
      const roof = needs.find(({ label }) => label.startsWith("Roof screws"))?.label;
      return {
        ...{ purlins: at("purlins.crossing"), posts: at("posts.post-base"), roof },
        taken: notices.some(({ pointer }) => pointer === "/structure/exposure"),
        salt: cautions.some(({ code }) => code === "salt"),
      };
    };
    const left = await classes(undefined);
    expect([left.taken, left.salt, left.purlins?.items[0]?.corrosion]).toEqual([true, true, "coated"]);
    const sheltered = await classes("sheltered");
    expect(sheltered.purlins?.items[0]?.corrosion).toBe("electroplated");
    expect(sheltered.purlins?.exposure).toEqual({ climate: "sheltered", treated: false, tannin: false });
    expect(sheltered.posts?.items.map(({ corrosion }) => corrosion)).toContain("stainless");
    expect(sheltered.taken).toBe(false);
    expect((await classes("salt")).purlins?.items[0]?.corrosion).toBe("stainless");
    expect([left.roof, sheltered.roof, (await classes("salt")).roof]).toEqual([
      "Roof screws",
      "Roof screws",
      "Roof screws, stainless",
    ]);
  });

  it("call shakes shakes, not shingles", async () => {
    const labels = async (covering: string) => {
      const structure = { kind: "gable", span: "16 ft", length: "24 ft", covering };
      return (await takenOff({ structure })).needs.map(({ label }) => label);
    };
    expect(await labels("wood-shakes")).toContain("Shakes");
    expect(await labels("wood-shakes")).not.toContain("Shingles");
    expect(await labels("wood-shingles")).toContain("Shingles");
  });

  it("of a list of pieces have no geometry but its kind, no covering, and the joints that it says", async () => {
    const { geometry, coverings, fasteners, cutList } = await takenOff(demo("market-stall"));
    expect([geometry, coverings]).toEqual([{ kind: "pieces" }, []]);
    expect(cutList.pieces.value).toBe("45");
    // Nine roof boards over five bearers each.
    expect(fasteners?.lines.find(({ groups }) => groups.includes("roof-boards"))?.sites.value).toBe("45");
  });

  it("are metric where the structure is", async () => {
    const { about, cutList, geometry } = await takenOff({ structure: { kind: "gable", span: "5 m", length: "6 m" } });
    expect(about.measure).toBe("metric");
    expect(geometry.kind === "gable" && geometry.frame.span).toMatchObject({
      value: "5",
      unit: "m",
      marked: "5000 mm",
    });
    expect(cutList.groups.find(({ name }) => name === "rafters")?.finished.section).toBe("50 × 150 mm");
  });
});
