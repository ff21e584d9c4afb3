export default function MatchView() {
  return null;
}
