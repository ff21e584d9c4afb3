const PAGE = /docs\/(method\/[\w/-]+)\.md/;

/** Where an equation stands, its page of the docs as a link. */
export function Source({ text }: { readonly text: string }) {
  const found = PAGE.exec(text);
  if (!found) return <>{text}</>;
  const [whole, page] = found;
  return (
    <>
      {text.slice(0, found.index)}
      <a href={`/docs/${page}.md`} target="_blank" rel="noopener">
        {page}
      </a>
      {text.slice(found.index + whole.length)}
    </>
  );
}
