export function ReviewPage() {
  return <main className="review" />;
}
