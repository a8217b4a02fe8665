/** The JSON a GET answers with, as the shape the test expects. */
export async function getJson<Answer>(url: string): Promise<Answer> {
  return (await (await fetch(url)).json()) as Answer;
}
