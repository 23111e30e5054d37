export async function main(_a: string[]): Promise<number> { return 0; }
