/** The cut list of the answer. */
import { cutListCsv } from "./csv.js";
import { Fig, Panel, SaveTable, type Shown } from "./figure.js";
import { type Head, Heads } from "./table-head.js";
import { said } from "./words.js";

/** Every piece group: size, how it is had, what milling it saves. */
export function Pieces({ m, answer }: Shown) {
  const { cutList, decision } = answer;
  const savings = new Map(decision.groups.map((group) => [group.group, group]));
  const reasons = new Map(decision.verdict.groups.map((group) => [group.group, group]));
  return (
    <Panel
      m={m}
      name="pieces"
      title="Pieces"
      gist={`${said(cutList.pieces)} in ${cutList.groups.length} groups, ${said(cutList.volume)}`}
    >
      <section class="scroll" tabindex={0} aria-label="Pieces">
        <table class="cards pieces" aria-label="Cut list">
          <Heads of={HEADS} />
          <tbody>
            {cutList.groups.map((group) => (
              <Row m={m} group={group} saving={savings.get(group.name)} reason={reasons.get(group.name)} />
            ))}
          </tbody>
          {decision.shared && <SharedRow m={m} of={decision.shared} />}
        </table>
      </section>
      {decision.groups.length > 0 && (
        <p class="hint">
          “Milling saves” and “and takes”: with this group bought instead, its cuts left out and the lumber order
          planned anew, the verdict's mix would cost so much more and take so much less. For a group that it buys, the
          same of everything milled. A dash: no plan saws any of it.
        </p>
      )}
      <SaveTable m={m} name="cut-list.csv" text={() => cutListCsv(answer)} />
    </Panel>
  );
}

const HEADS: readonly Head[] = [
  "Pieces",
  { number: "How many" },
  ...["Finished", "Sawn at", "Verdict"],
  ...[{ number: "Milling saves" }, { number: "and takes" }, { number: "One weighs" }],
];

type Answer = Shown["answer"];

interface RowProps extends Pick<Shown, "m"> {
  readonly group: Answer["cutList"]["groups"][number];
  readonly saving: Answer["decision"]["groups"][number] | undefined;
  readonly reason: Answer["decision"]["verdict"]["groups"][number] | undefined;
}

function Row({ m, group, saving, reason }: RowProps) {
  const { finished, rough, weight } = group;
  return (
    <tr>
      <th scope="row">
        {group.label} <span class="marks">{span(group.marks)}</span>
      </th>
      <td class="number" data-head="How many">
        <Fig m={m} of={group.count} />
      </td>
      <td data-head="Finished">
        {finished.section}, <Fig m={m} of={finished.length} text={finished.length.marked} />
      </td>
      <td data-head="Sawn at">{rough ? `${rough.section}, ${rough.length.marked}` : (group.notMilled ?? "–")}</td>
      <td data-head="Verdict">
        <From of={reason} />
      </td>
      <td class="number" data-head="Milling saves">
        {saving ? <Fig m={m} of={saving.cashSaved} /> : "–"}
      </td>
      <td class="number" data-head="and takes">
        {saving ? <Fig m={m} of={saving.extraHours} /> : "–"}
      </td>
      <td class="number" data-head="One weighs">
        {weight ? <Fig m={m} of={weight.lifted} /> : "–"}
      </td>
    </tr>
  );
}

/** What belongs to no one group. */
function SharedRow({ m, of }: Pick<Shown, "m"> & { readonly of: NonNullable<Answer["decision"]["shared"]> }) {
  return (
    <tfoot>
      <tr>
        <th scope="row" colspan={5}>
          Set-up, hire, packs and delivery, which groups share
        </th>
        <td class="number" data-head="Milling saves">
          <Fig m={m} of={of.cash} />
        </td>
        <td class="number" data-head="and takes">
          <Fig m={m} of={of.hours} />
        </td>
        <td />
      </tr>
    </tfoot>
  );
}

/** How many come from the logs, and how many from the yard. */
function From({ of }: { readonly of: RowProps["reason"] }) {
  if (!of) return "–";
  return (
    <>
      {of.side !== "buy" && <span class="way mill">{`mill ${of.milled}`}</span>}
      {of.side === "both" && ", "}
      {of.side !== "mill" && <span class="way buy">{`buy ${of.bought}`}</span>}
    </>
  );
}

const span = (marks: readonly string[]): string =>
  marks.length > 1 ? `${marks[0]} to ${marks.at(-1)}` : (marks[0] ?? "");
